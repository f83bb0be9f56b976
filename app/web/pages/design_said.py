"""A design in words: what the garment is, for what body, and how much larger it is part by part."""

from dataclasses import dataclass

from app.book.plan import Plan
from app.craft.constructions import constructions
from app.craft.constructions.drawing import Construction
from app.craft.constructions.ease import ease_named
from app.craft.constructions.wanting import EASE, Taken
from app.planning.design import taken_for
from app.web.pages.measure_said import assumed_said, ease_said, size_cm
from app.web.shown import Shown


@dataclass(frozen=True, slots=True)
class EaseSaid:
    """A part, its ease in words, and what it then measures."""

    part: str
    ease: str
    becomes: str


@dataclass(frozen=True, slots=True)
class Designed:
    """What a plan was drawn from. `fit` is the ease by the chart's name with its version, empty
    where nothing is fitted; `assumed` are the measures nobody took."""

    title: str
    fit: str
    ease: tuple[EaseSaid, ...]
    measured: tuple[str, ...]
    assumed: tuple[str, ...]


def designed(plan: Plan, shown: Shown) -> Designed | None:
    """The design of a plan in words; None for a plan without one, or one that fits no body now."""
    if plan.design is None or plan.gauge is None:
        return None
    construction = constructions().get(plan.design.construction)
    try:
        taken = taken_for(plan.design, plan.gauge) if construction else None
    except ValueError:
        return None
    if construction is None or taken is None:
        return None
    return Designed(
        construction.title,
        fit_said(taken),
        ease_lines(construction, taken, shown),
        tuple(f"{one.name} {shown.size(one.mm)}" for one in plan.design.measures),
        tuple(f"{name} {assumed_said(one, shown)}" for name, one in taken.assumed.items()),
    )


def fit_said(taken: Taken) -> str:
    """The ease of the chest by its name in the charts, and which chart that is."""
    name = taken.wanted.choices.get(EASE)
    if name is None:
        return ""
    return f"{name} by {ease_named(name).source}"


def ease_lines(construction: Construction, taken: Taken, shown: Shown) -> tuple[EaseSaid, ...]:
    """Each part with its ease, in the construction's order."""
    ease, measures = taken.wanted.ease, taken.wanted.measures
    return tuple(
        EaseSaid(name, ease_said(ease[name], shown), size_cm(measures[name] + ease[name], shown))
        for name in construction.eases
    )
