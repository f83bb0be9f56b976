"""Wool that is to be looked at for moth: what is due, and what is kept apart until then."""

from dataclasses import dataclass
from datetime import date

from app.book.book import Book
from app.book.holding import Holding
from app.book.words import FIBRE_KINDS, SINKS

LOOK_AFTER_DAYS = 21
"""New wool is kept apart for three weeks: in the warm, eggs of moth hatch in them (practice)."""

LOOK_EVERY_DAYS = 90
"""Wool that was looked at and found clean is looked at again in a season (practice)."""


@dataclass(frozen=True, slots=True)
class ToLook:
    """A holding to be looked at, of a fleece in several parts the one due first; `due` today or
    before, `days` over the day it was due."""

    holding: Holding
    due: bool
    days: int


def to_look_at(book: Book, today: date) -> tuple[ToLook, ...]:
    """What is due, the longest overdue first, then what is kept apart without being due. The parts
    of a fleece are looked at together."""
    found = [
        _to_look(one, today)
        for one in book.holdings
        if one.put_away is None and one.kind not in SINKS and (one.look_again or one.apart)
    ]
    wanted = [one for one in found if one.due or one.holding.apart]
    wanted.sort(key=lambda one: (not one.due, -one.days, one.holding.code))
    first: dict[str, ToLook] = {}
    for one in wanted:
        first.setdefault(lies_with(one.holding), one)
    return tuple(first.values())


def lies_with(holding: Holding) -> str:
    """What a holding is looked at with: the wool of a fleece together, all else by itself."""
    return (holding.fleece_id or holding.id) if holding.kind in FIBRE_KINDS else holding.id


def _to_look(holding: Holding, today: date) -> ToLook:
    days = (today - holding.look_again).days if holding.look_again else 0
    return ToLook(holding, holding.look_again is not None and days >= 0, days)
