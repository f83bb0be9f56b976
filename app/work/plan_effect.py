"""Save a change of a garment, and tell what it does to the answer."""

from collections.abc import Callable
from typing import TypeVar

from sqlmodel import Session

from app.planning.changes import Effect, effect
from app.work.reckoning import current

T = TypeVar("T")


def save_and_tell(session: Session, plan_id: str, save: Callable[[], T]) -> tuple[T, Effect | None]:
    """What `save` answers, and what it did to a plan; None for a plan that is not reckoned with
    before and after it."""
    before = current(session)
    done = save()
    after = current(session)
    both = (before.reckoning, after.reckoning)
    if any(plan_id not in {one.plan_id for one in known.plans} for known in both):
        return done, None
    return done, effect(before.book, before.reckoning, after.book, after.reckoning, plan_id)
