"""Whose turn it is: the order in which the shelf serves the plans."""

from collections.abc import Iterable

from app.book.plan import Plan
from app.book.words import OPEN_STATES, PlanState

ORDER: tuple[PlanState, ...] = ("being knit", "intended", "finished", "put away")


def in_turn(plans: Iterable[Plan]) -> list[Plan]:
    """Every plan: being knit first, then those intended by the maker's priority, then the done."""
    return sorted(plans, key=lambda one: (ORDER.index(one.state), one.priority, one.id))


def draws(plan: Plan) -> bool:
    """Whether a plan draws on the shelf still."""
    return plan.state in OPEN_STATES
