"""What the sheet of a plan tells beside its figures: the work in words, fibre and care."""

from collections.abc import Iterator
from dataclasses import dataclass

from app.book.book import Book
from app.book.person import Measure
from app.book.plan import Part, Plan
from app.book.words import Edges
from app.craft.care import care
from app.craft.shaping import counted
from app.planning.design import shaping_words
from app.planning.needs import PartNeed, needs_of
from app.planning.picture_drawn import drawn_pieces, notes_of, same_runs
from app.planning.places import in_round
from app.planning.schedule import schedule
from app.planning.yarns import Lots

KNIT_ON: frozenset[Edges] = frozenset({"cast off", "cast off and seams", "stretchy cast-off"})
"""Edges of a piece whose first row is knit on from another."""

SMALL_CHEST_MM, SMALL_HEAD_MM = 640, 510
"""Up to these a body is taken to be a small child's, of about six years or less (practice)."""


@dataclass(frozen=True, slots=True)
class PlanSheet:
    """The work of each part by its id, row by row, and the needles in mm it is knit on where they
    are known; what is done besides, to join the pieces; fibres with how they are washed; and
    whether it is for a small child."""

    work: dict[str, tuple[str, ...]]
    needles: dict[str, tuple[float, ...]]
    notes: tuple[str, ...]
    fibres: tuple[str, ...]
    care: tuple[str, ...]
    small_child: bool


def plan_sheet(book: Book, plan: Plan) -> PlanSheet:
    """What a sheet of this plan tells."""
    parts = book.parts_of.get(plan.id, [])
    needs = needs_of(plan, parts, Lots(book))
    yarns = dict.fromkeys(one.yarn_id for need in needs for one in need.roles if one.yarn_id)
    fibres = tuple(dict.fromkeys(book.yarn[one].fibre for one in yarns if book.yarn[one].fibre))
    drawn = drawn_pieces(plan)
    work = {}
    for need in needs:
        piece = drawn.get(need.part.id)
        told = piece.words if piece and same_runs(need.part, piece) else _work(need)
        work[need.part.id] = told
    return PlanSheet(
        work=work,
        needles={one.part.id: _needles(one) for one in needs},
        notes=notes_of(plan),
        fibres=fibres,
        care=care(fibres) if fibres else (),
        small_child=small_child(book, plan),
    )


def small_child(book: Book, plan: Plan) -> bool:
    """Whether the body it is for is a small child's, by the plan's measures, else its wearer's."""
    person = book.person.get(plan.person_id or "")
    measures = (
        *(plan.design.measures if plan.design else ()),
        *(person.measures if person else ()),
    )
    chest, head = _first(measures, "chest"), _first(measures, "head")
    if chest is not None:
        return chest <= SMALL_CHEST_MM
    return head is not None and head <= SMALL_HEAD_MM


def _first(measures: tuple[Measure, ...], name: str) -> int | None:
    return next((one.mm for one in measures if one.name == name), None)


def _work(need: PartNeed) -> tuple[str, ...]:
    runs = schedule(need.part.shape, need.gauge, need.part.worked) if need.gauge else ()
    if need.gauge is None or not runs:
        return ()
    tube, gauge = in_round(need.part), need.gauge
    told = [f"{begun(need.part)} {runs[0].stitches} stitches."]
    ended = runs[0].stitches
    for run in runs:
        told += [*_between(ended, run.stitches, tube), shaping_words(run, tube, gauge)]
        ended = run.stitches_to
    if "off" in need.part.edges:
        loosely = ", loosely" if "stretchy" in need.part.edges else ""
        told.append(f"Cast off the {runs[-1].stitches_to} stitches that are left{loosely}.")
    return tuple(told)


def _between(ended: int, begun: int, tube: bool) -> Iterator[str]:
    """What is done between two runs: flat, fewer stitches are an armhole or a neck."""
    many = counted(abs(begun - ended), "stitch", "es")
    if begun < ended:
        how = f"Decrease {many} evenly" if tube else f"Cast off {many}"
        yield f"{how}: {begun} stitches."
    if begun > ended:
        yield f"Increase {many} evenly: {begun} stitches."


def begun(part: Part) -> str:
    """How the first row of a part comes about, with the stitches after it."""
    if part.edges.startswith("picked up"):
        return "Pick up"
    if part.edges == "none":
        return "Begin with"
    return "Knit on from" if part.edges in KNIT_ON else "Cast on"


def _needles(need: PartNeed) -> tuple[float, ...]:
    """The needles of a part's runs, each its own or that of the gauge, in the order of the work."""
    if need.gauge is None:
        return ()
    runs = schedule(need.part.shape, need.gauge, need.part.worked)
    found = [run.needle_mm or need.gauge.needle_mm for run in runs]
    return tuple(dict.fromkeys(one for one in found if one))
