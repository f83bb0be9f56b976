"""What finished garments tell: the yarn they took against what was planned without learning, each
part against the rest of its garment, and the hours they were knit in."""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from datetime import date
from types import MappingProxyType

from app.book.book import Book
from app.book.plan import Plan
from app.book.shape import Stated
from app.craft.patterns import known_or_unsure
from app.planning.learning.factors import PACE_NAME
from app.planning.learning.observed import Names, Observation
from app.planning.learning.usual import PACES
from app.planning.needs_planned import STATED_MEDIAN, PartNeed, planned_needs
from app.planning.places import place_of
from app.planning.schedule import schedule
from app.planning.yarns import Lots

FACTOR_OF: Mapping[str, str] = MappingProxyType(
    {"gauge": "took by gauge", "swatch": "took by swatch", "stated": "took of stated"}
)
"""The factor of a garment for what its yarn was reckoned from."""

PLACE, PATTERN = "took at place", "took in pattern"
PLAIN = "stocking stitch"

SCALE = 0.01
"""What a garment took is weighed, and shared out among its parts, to about this (practice)."""

LEAST_M = 5.0
SAME = 0.002
"""A part that took the same share as its garment was not weighed by itself."""


def garments_seen(book: Book) -> Iterator[Observation]:
    """Every finished garment of which it is known what it took, for each basis of its reckoning."""
    lots = Lots(book)
    for plan in book.plans:
        if plan.state == "finished" and plan.took:
            yield from _of_garment(plan, lots)


def garment_hours_seen(book: Book) -> Iterator[Observation]:
    """Hours of a garment noted as it was finished, where none were noted by the evening."""
    noted = {one.plan_id for one in book.stints}
    for plan in book.plans:
        minutes = sum(one.minutes or 0 for one in plan.took)
        metres = sum(one.mm or 0 for one in plan.took) / 1000
        if plan.id not in noted and minutes and metres:
            yield Observation(
                key=f"hours {plan.id}",
                day=plan.finished_on or date.min,
                factors=(f"{PACE_NAME}knit",),
                what=f"{plan.name}, all of it",
                measured=metres * 60 / minutes,
                usual=PACES["knit"].per_hour,
                unit="m/h",
                names=Names(),
                error=0.03,
            )


def pattern_of(need: PartNeed) -> str:
    """The stitch pattern in which most of a part is knit; empty for plain knit and bare amounts."""
    if need.gauge is None:
        return ""
    runs = schedule(need.part.shape, need.gauge, need.part.worked)
    rows: dict[str, int] = {}
    for run in runs:
        name = known_or_unsure(run.pattern).name
        rows[name] = rows.get(name, 0) + run.rows
    chief = max(rows, key=lambda name: rows[name], default=PLAIN)
    return "" if chief == PLAIN else chief


def source_of(book: Book, plan: Plan) -> str:
    """Whose stated amount a plan goes by: where its pattern was printed, else the pattern."""
    pattern = book.pattern.get(plan.pattern_id or "")
    return (pattern.source or pattern.name) if pattern else ""


def _of_garment(plan: Plan, lots: Lots) -> Iterator[Observation]:
    bare = replace(plan, cast_on=None)
    needs = planned_needs(bare, lots.book.parts_of.get(plan.id, []), lots)
    for basis, factor in FACTOR_OF.items():
        mine = [one for one in needs if one.basis == basis and _took_m(plan, one) > 0]
        planned = sum(_planned_m(one) for one in mine)
        took = sum(_took_m(plan, one) for one in mine)
        if planned >= LEAST_M and took > 0:
            yield _whole(plan, lots.book, factor, took / planned, _shape_u(mine))
            if basis != "stated" and len(mine) > 1:
                yield from _parts(plan, mine, took / planned)


def _whole(plan: Plan, book: Book, factor: str, times: float, shape_u: float) -> Observation:
    stated = factor == FACTOR_OF["stated"]
    return Observation(
        key=f"garment {plan.id} {factor}",
        day=plan.finished_on or date.min,
        factors=(factor,),
        what=f"{plan.name}, yarn {'of the amount stated' if stated else 'taken against planned'}",
        measured=times,
        usual=STATED_MEDIAN if stated else 1.0,
        unit="share" if stated else "times",
        names=Names(source=source_of(book, plan)),
        error=max(SCALE, shape_u),
    )


def _parts(plan: Plan, needs: list[PartNeed], whole: float) -> Iterator[Observation]:
    for need in needs:
        beside = _took_m(plan, need) / _planned_m(need) / whole
        if abs(beside - 1) > SAME:
            pattern = pattern_of(need)
            yield Observation(
                key=f"part {need.part.id}",
                day=plan.finished_on or date.min,
                factors=(PLACE, PATTERN) if pattern else (PLACE,),
                what=f"{plan.name}, {need.part.name} beside the rest",
                measured=beside,
                usual=1.0,
                unit="times",
                names=Names(place=place_of(need.part), pattern=pattern),
                error=SCALE,
            )


def _took_m(plan: Plan, need: PartNeed) -> float:
    return sum(one.mm or 0 for one in plan.took if one.part_id == need.part.id) / 1000


def _planned_m(need: PartNeed) -> float:
    """Metres planned of a part; of a stated one the amount as it is stated."""
    if isinstance(need.part.shape, Stated):
        return need.part.shape.mm / 1000 * need.part.copies
    return sum(one.need.value for one in need.roles)


def _shape_u(needs: list[PartNeed]) -> float:
    """How unsure the shapes are of which it was made, as a share: that is no trait of the maker."""
    return max(one.part.shape_u_pct for one in needs) / 100
