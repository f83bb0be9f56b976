"""Weigh or measure a skein again: the reading is kept, and the book follows where it should."""

from datetime import date

from sqlmodel import Session

from app.book import woolbook
from app.book.event import Balance, Event, Line
from app.book.holding import Holding
from app.book.reading import Reading
from app.book.woolbook import Entry, mm_of
from app.store.records import post, put
from app.store.skein_find import balance_of, readings_of
from app.work.skein_readings import (
    Length,
    Weight,
    Wraps,
    length_reading,
    mass_reading,
    wraps_reading,
)


def weigh_skein(session: Session, skein: Holding, weight: Weight, day: date) -> Event | None:
    """Keep a weighing; a dry one that disagrees moves the grams, and the metres in proportion.

    None where nothing moved: a damp weighing, or one that agrees.
    """
    return _taken(session, skein, mass_reading(skein.id, weight, day))


def measure_skein(session: Session, skein: Holding, length: Length, day: date) -> Event | None:
    """Keep a length; it moves the metres unless a finished or later one stands above it."""
    return _taken(session, skein, length_reading(skein.id, length, day))


def wrap_skein(session: Session, skein: Holding, wraps: Wraps, day: date) -> None:
    """Keep a thickness in wraps per inch; it moves nothing in the book."""
    put(session, wraps_reading(skein.id, wraps, day))


def _taken(session: Session, skein: Holding, reading: Reading) -> Event | None:
    now = balance_of(session, skein.id)
    entry = woolbook.correct({skein.id: now}, skein, reading, readings_of(session, skein.id))
    put(session, reading)
    if entry is None:
        return None
    lines = _in_proportion(entry, skein, now)
    return post(session, entry.kind, reading.day, lines)


def _in_proportion(entry: Entry, skein: Holding, now: Balance) -> tuple[Line, ...]:
    """A change of the grams alone takes the metres with it."""
    return tuple(
        Line(line.holding_id, line.mg, line.mm or mm_of(now, line.mg))
        if line.holding_id == skein.id
        else line
        for line in entry.lines
    )
