"""The days of a calendar: when wool is to be looked at for dryness, and when there is spinning."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta

from app.book.book import Book
from app.planning.answers import Reckoning
from app.planning.drying import all_drying
from app.planning.time_needed import Turn, time_needed

DRYING_DAYS = 3
"""Days that washed wool usually dries indoors (practice)."""


@dataclass(frozen=True, slots=True)
class Days:
    """An entry: its name for good, what to do, its first and last day, and more about it."""

    uid: str
    title: str
    first: date
    last: date
    about: str


def days(book: Book, reckoning: Reckoning, today: date) -> tuple[Days, ...]:
    """Every entry: what dries first, then the work on each garment's wool in its turn."""
    needed = time_needed(book, reckoning, today)
    return (*_drying(book, today), *(_work(book, one) for one in needed.turns))


def _drying(book: Book, today: date) -> Iterator[Days]:
    for one in all_drying(book):
        readings = book.readings_of.get(one.holding.id, [])
        known = [reading.day for reading in readings]
        since = max(known, default=one.holding.day or today)
        day = today if one.dry else max(today, since + timedelta(DRYING_DAYS))
        about = "Dry when two weighings an hour or more apart agree."
        yield Days(
            f"dry-{one.holding.id}", f"Weigh {one.holding.code}: is it dry?", day, day, about
        )


def _work(book: Book, turn: Turn) -> Days:
    plan, tasks = turn.job.plan, turn.job.tasks
    told = [f"{one.work} {book.yarn[one.yarn_id].name}: {one.hours.value:.1f} h" for one in tasks]
    uid = f"wool-{plan.id}"
    return Days(uid, f"Wool for {plan.name}", turn.begins, turn.ready, "\n".join(told))
