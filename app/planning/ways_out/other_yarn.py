"""Another yarn for the borders, the sleeves or the yoke, from what is free and suits."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from app.book.plan import Part, RoleYarn
from app.book.words import Place
from app.planning.places import place_of
from app.planning.remarks import firmness_remark
from app.planning.ways_out.situation import Situation
from app.planning.ways_out.way import Effort, Proposal, Said, Way, simple

MAIN = "main"
SPARE = 1.1
"""What is free must be more than is expected to go in, by this much (practice)."""


@dataclass(frozen=True, slots=True)
class Trimming:
    """Parts that may be of another yarn without harm, and what that is held to cost in evenings
    (assumed)."""

    word: str
    places: tuple[Place, ...]
    evenings: float


SETS = (
    Trimming("borders", ("band", "neck", "cuff"), 0.4),
    Trimming("yoke", ("yoke",), 0.8),
    Trimming("sleeves", ("sleeve",), 1.0),
)


def find(situation: Situation) -> Iterator[Proposal]:
    """One proposal for each of them: the yarn that is most like the garment's own."""
    for one in SETS:
        parts = [part for part in situation.parts if _may_change(situation, part, one)]
        needs = sum(situation.needs[part.id].roles[0].need.value for part in parts)
        yarn_id = most_like(situation, parts, SPARE * needs) if parts else None
        if yarn_id:
            yield _proposal(situation, one, parts, yarn_id)


def _may_change(situation: Situation, part: Part, one: Trimming) -> bool:
    roles = situation.needs[part.id].roles
    plain = len(roles) == 1 and roles[0].role == MAIN
    here = place_of(part) in one.places
    return here and plain and situation.short_of(part) and not situation.begun(part)


def most_like(situation: Situation, parts: list[Part], wanted_m: float) -> str | None:
    """A yarn that suits those parts and of which so much is free: of the same fibre if there is
    one, then the nearest in grist to their own."""
    needs = [situation.needs[part.id] for part in parts]
    own_id = needs[0].roles[0].yarn_id
    own = situation.book.yarn.get(own_id or "")
    own_tex = situation.lots.tex(own_id) if own_id else None
    found = []
    for yarn in situation.book.yarns:
        tex = situation.lots.tex(yarn.id)
        remarks = [firmness_remark(yarn, one, situation.lots) for one in needs]
        suits = all(one is not None and not one.doubt for one in remarks)
        if yarn.id != own_id and tex and suits and _free_m(situation, yarn.id) >= wanted_m:
            strange = own is not None and yarn.fibre.casefold() != own.fibre.casefold()
            apart = abs(tex.value / own_tex.value - 1) if own_tex else 0.0
            found.append((strange, apart, yarn.id))
    return min(found)[2] if found else None


def _free_m(situation: Situation, yarn_id: str) -> float:
    shelf, skeins = situation.reckoning.shelf, situation.lots.skeins.get(yarn_id, [])
    return sum(shelf[one.id].free_m for one in skeins if one.id in shelf)


def _proposal(situation: Situation, one: Trimming, parts: list[Part], yarn_id: str) -> Proposal:
    mine = {part.id for part in parts}
    put = [replace(part, yarns=(RoleYarn(MAIN, yarn_id),)) for part in parts]
    gone = [p for p in situation.book.promises_of.get(situation.plan_id, []) if p.part_id in mine]
    name = situation.book.yarn[yarn_id].name
    what = parts[0].name.lower() if len(parts) == 1 else one.word
    return simple(
        situation,
        f"other-{one.word}",
        Said(f"Knit the {what} in {name}"),
        Effort(one.evenings, Said(f"the {what} in another yarn, and a swatch of it")),
        situation.changed(put, gone),
    )


WAY = Way("other", find)
