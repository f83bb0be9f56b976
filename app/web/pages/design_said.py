"""A design in words: what the garment is, for what body, and how much larger it is part by part."""

from dataclasses import dataclass

from app.book.plan import Part, Plan
from app.craft.constructions import constructions
from app.craft.constructions.as_drawn import AsDrawn, as_drawn
from app.craft.constructions.drawing import Construction, Drawing
from app.craft.constructions.ease import ease_named
from app.craft.constructions.wanting import EASE, Taken
from app.planning.design import taken_for
from app.planning.parted import parted
from app.web.pages.measure_said import assumed_said, ease_said, size_cm
from app.web.pages.parted_said import PartedSaid, parted_said
from app.web.shown import Shown

HALF = 0.5
"""A stitch or row that is not half there is nothing to speak of."""


@dataclass(frozen=True, slots=True)
class PlaceSaid:
    """A measure, its ease in words (empty where it takes none), what was asked for, what was drawn
    in stitches or rows and on the tape, and how far apart they are; `drawn` is empty where nothing
    of the garment follows from it."""

    part: str
    ease: str
    asked: str
    drawn: str
    off: str


@dataclass(frozen=True, slots=True)
class Designed:
    """What a plan was drawn from. `fit` is the ease by the chart's name with its version, empty
    where nothing is fitted; `assumed` are the measures nobody took, `parted` the parts that no
    longer meet."""

    title: str
    fit: str
    places: tuple[PlaceSaid, ...]
    measured: tuple[str, ...]
    assumed: tuple[str, ...]
    parted: tuple[PartedSaid, ...]


def designed(plan: Plan, parts: list[Part], shown: Shown) -> Designed | None:
    """The design of a plan in words; None for a plan without one, or one that fits no body now."""
    if plan.design is None or plan.gauge is None:
        return None
    construction = constructions().get(plan.design.construction)
    try:
        taken = taken_for(plan.design, plan.gauge) if construction else None
        drawn = construction.draw(taken.wanted) if construction and taken else None
    except ValueError:
        return None
    if construction is None or taken is None or drawn is None:
        return None
    return Designed(
        construction.title,
        fit_said(taken),
        place_lines(construction, taken, drawn, shown),
        tuple(f"{one.name} {shown.size(one.mm)}" for one in plan.design.measures),
        tuple(f"{name} {assumed_said(one, shown)}" for name, one in taken.assumed.items()),
        parted_said(parted(plan, parts), shown),
    )


def fit_said(taken: Taken) -> str:
    """The ease of the chest by its name in the charts, and which chart that is."""
    name = taken.wanted.choices.get(EASE)
    if name is None:
        return ""
    return f"{name} by {ease_named(name).source}"


def place_lines(
    construction: Construction, taken: Taken, drawn: Drawing, shown: Shown
) -> tuple[PlaceSaid, ...]:
    """Each measure that lies somewhere in the garment or takes ease, as asked for and as drawn."""
    ease, found = taken.wanted.ease, as_drawn(taken.wanted, drawn)
    there = {one.measure for one in found}
    told = [
        PlaceSaid(
            one.measure,
            ease_said(ease[one.measure], shown) if one.measure in ease else "",
            size_cm(one.asked_cm, shown),
            f"{shown.number(one.count)} {one.unit}, {size_cm(one.cm, shown)}",
            _off(one, shown),
        )
        for one in found
    ]
    told += [
        PlaceSaid(name, ease_said(ease[name], shown), size_cm(taken.wanted.cm(name), shown), "", "")
        for name in construction.eases
        if name not in there
    ]
    return tuple(told)


def _off(one: AsDrawn, shown: Shown) -> str:
    if abs(one.more) < HALF:
        return "as asked for"
    count = f"{shown.number(abs(one.more), 1, least=0)} {one.unit}"
    return f"{count}, {size_cm(abs(one.more_cm), shown)} {'more' if one.more > 0 else 'less'}"
