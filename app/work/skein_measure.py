"""Weigh or measure a skein again: the readings are kept, and the book follows where it should."""

from dataclasses import dataclass
from datetime import date

from sqlmodel import Session

from app.book import woolbook
from app.book.event import Balance, Event, Line
from app.book.event_note import noted
from app.book.holding import Holding
from app.book.reading import Reading
from app.book.woolbook import WEIGHING, mm_of
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


@dataclass(frozen=True, slots=True)
class Weighing:
    """What was read off the scale, the reel and the gauge; whatever was not taken is missing.
    `reason` is why the book is put right."""

    day: date
    weight: Weight | None = None
    lengths: tuple[Length, ...] = ()
    wraps: Wraps | None = None
    reason: str = ""


def measure_again(session: Session, skein: Holding, weighing: Weighing) -> Event | None:
    """Keep the readings and let the book follow them, in one event.

    A dry weight that disagrees moves the grams, and the metres in proportion unless it is the first
    dry one of a skein that came damp; a length that counts moves the metres. None where nothing
    moved: damp wool, wraps, or readings that agree.
    """
    readings = _readings(skein, weighing)
    before = balance_of(session, skein.id)
    now = before
    earlier = readings_of(session, skein.id)
    for reading in readings:
        now = _after(skein, now, reading, [*earlier, *readings])
        put(session, reading)
    return _posted(session, skein, before, now, weighing.day, noted(weighing.reason, readings))


def _readings(skein: Holding, weighing: Weighing) -> list[Reading]:
    found = [mass_reading(skein.id, weighing.weight, weighing.day)] if weighing.weight else []
    found += [length_reading(skein.id, one, weighing.day) for one in weighing.lengths]
    return found + (
        [wraps_reading(skein.id, weighing.wraps, weighing.day)] if weighing.wraps else []
    )


def _after(skein: Holding, now: Balance, reading: Reading, readings: list[Reading]) -> Balance:
    """What the skein holds once the book has followed one reading."""
    entry = woolbook.correct({skein.id: now}, skein, reading, readings)
    if entry is None:
        return now
    gained = entry.lines[0]
    longer = gained.mm if _only_dried(reading, readings) else gained.mm or mm_of(now, gained.mg)
    return Balance(now.mg + gained.mg, now.mm + longer)


def _only_dried(reading: Reading, readings: list[Reading]) -> bool:
    """Whether the book had the weight of damp wool until this reading: drying shortens nothing."""
    masses = [one for one in readings if one.kind == "mass" and one.id != reading.id]
    return reading.kind == "mass" and {one.wool for one in masses} == {"damp"}


def _posted(
    session: Session, skein: Holding, before: Balance, now: Balance, day: date, note: str
) -> Event | None:
    gained = Line(skein.id, now.mg - before.mg, now.mm - before.mm)
    if not (gained.mg or gained.mm):
        return None
    sink = (Line(WEIGHING, -gained.mg),) if gained.mg else ()
    return post(session, "correct", day, (gained, *sink), note)
