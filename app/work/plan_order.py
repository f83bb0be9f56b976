"""The order of the garments: the first in the list is first served from the shelf."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from typing import TypeVar

from sqlmodel import Session

from app.book.plan import Plan
from app.planning.turn import in_turn
from app.store.records import load_book, put

Thing = TypeVar("Thing")


def next_priority(plans: Iterable[Plan]) -> int:
    """The priority of a plan added now: after all others."""
    return max((one.priority for one in plans), default=0) + 1


def moved(things: Sequence[Thing], thing: Thing, earlier: bool) -> list[Thing]:
    """The same things with one moved a place earlier or later; the ends stay where they are."""
    row = list(things)
    place = row.index(thing)
    other = place - 1 if earlier else place + 1
    if 0 <= other < len(row):
        row[place], row[other] = row[other], thing
    return row


def move_plan(session: Session, plan_id: str, earlier: bool) -> bool:
    """Move a plan one place earlier or later among those in the same state.

    False where it stands first or last already. KeyError for a plan that is not in the book.
    """
    book = load_book(session)
    plan = book.plan[plan_id]
    plans = in_turn(book.plans)
    row = moved(plans, plan, earlier)
    can_move = row != plans and [one.state for one in row] == [one.state for one in plans]
    _number(session, row if can_move else plans)
    return can_move


def _number(session: Session, plans: list[Plan]) -> None:
    for place, plan in enumerate(plans, start=1):
        if plan.priority != place:
            put(session, replace(plan, priority=place))
