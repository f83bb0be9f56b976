"""Wool that is to be looked at for moth: what is due, and what is kept apart until then."""

from dataclasses import dataclass
from datetime import date

from app.book.book import Book
from app.book.holding import Holding
from app.book.words import SINKS

LOOK_AFTER_DAYS = 21
"""New wool is kept apart for three weeks: in the warm, eggs of moth hatch in them (practice)."""

LOOK_EVERY_DAYS = 90
"""Wool that was looked at and found clean is looked at again in a season (practice)."""


@dataclass(frozen=True, slots=True)
class ToLook:
    """A holding to be looked at; `due` today or before, `days` over the day it was due."""

    holding: Holding
    due: bool
    days: int


def to_look_at(book: Book, today: date) -> tuple[ToLook, ...]:
    """What is due, the longest overdue first, then what is kept apart without being due."""
    found = [
        _to_look(one, today)
        for one in book.holdings
        if one.put_away is None and one.kind not in SINKS and (one.look_again or one.apart)
    ]
    wanted = [one for one in found if one.due or one.holding.apart]
    return tuple(sorted(wanted, key=lambda one: (not one.due, -one.days, one.holding.code)))


def _to_look(holding: Holding, today: date) -> ToLook:
    days = (today - holding.look_again).days if holding.look_again else 0
    return ToLook(holding, holding.look_again is not None and days >= 0, days)
