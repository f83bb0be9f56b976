"""The need of a part: as it is planned, and with what finished garments taught.

Only a plan that is not begun is reckoned with what was learned: one that is on the needles keeps
the numbers it was cast on with.
"""

from dataclasses import replace
from weakref import WeakKeyDictionary

from app.book.book import Book
from app.book.plan import Part, Plan
from app.craft.figure import Figure
from app.planning.learning import Learnt, learn
from app.planning.learning.garments_taught import Taught, taught
from app.planning.needs_planned import (
    PartNeed,
    RoleNeed,
    meant_yarn,
    planned_needs,
    stated_factor,
)
from app.planning.yarns import Lots

__all__ = ["PartNeed", "RoleNeed", "learns_of", "meant_yarn", "needs_of", "stated_factor"]

_LEARNT: WeakKeyDictionary[Lots, Learnt] = WeakKeyDictionary()
"""What a book taught is learned once while it is looked at."""


def needs_of(plan: Plan, parts: list[Part], lots: Lots) -> tuple[PartNeed, ...]:
    """The need of each part of a plan, in m."""
    planned = planned_needs(plan, parts, lots)
    if not learns_of(plan, lots.book):
        return planned
    learnt = _learnt_of(lots)
    return tuple(_as_learned(plan, one, learnt) for one in planned)


def learns_of(plan: Plan, book: Book) -> bool:
    """True for a plan not begun, where garments were finished that can tell something of it."""
    return plan.state == "intended" and any(one.took for one in book.plans)


def _learnt_of(lots: Lots) -> Learnt:
    if lots not in _LEARNT:
        _LEARNT[lots] = learn(lots.book)
    return _LEARNT[lots]


def _as_learned(plan: Plan, need: PartNeed, learnt: Learnt) -> PartNeed:
    told = taught(learnt, plan, need)
    if told is None:
        return need
    roles = tuple(replace(one, need=_times(one.need, need, told)) for one in need.roles)
    loop = _times(need.loop, need, told) if need.loop else None
    return replace(need, loop=loop, roles=roles, working=(*need.working, told.step))


def _times(figure: Figure, need: PartNeed, told: Taught) -> Figure:
    """A figure as it is by what was learned: the causes it takes the place of are gone."""
    instead = told.instead_of(need)
    causes = {name: u * told.times for name, u in figure.causes.items() if name not in instead}
    value = figure.value * told.times
    for name, share in told.causes.items():
        causes[name] = value * share
    return Figure(value, figure.unit, causes)
