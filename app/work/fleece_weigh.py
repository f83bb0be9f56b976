"""Weigh a fleece, and write down how far it has come."""

from dataclasses import dataclass, replace
from datetime import date

from sqlmodel import Session

from app.book import woolbook
from app.book.event import Event, Line
from app.book.holding import Holding
from app.book.reading import Reading
from app.book.woolbook import WEIGHING, Entry, Portion
from app.book.words import WoolState
from app.store.records import post, put
from app.store.skein_find import balance_of, readings_of
from app.work.fleece_step import is_step, step_note
from app.work.skein_readings import Weight, mass_reading
from app.work.weighing_note import noted


@dataclass(frozen=True, slots=True)
class Weighed:
    """The event of a weighing, if the book moved, and mg gained (positive) or gone."""

    event: Event | None
    gained_mg: int


def weigh_fleece(
    session: Session, holding: Holding, weight: Weight, state: WoolState, day: date
) -> Weighed:
    """Keep a weighing, and what it says of the wool.

    A step forward sends what it took to waste. Any other weighing that disagrees with the book is
    put right by weighing and moisture; one that was damp moves nothing, unless it begins the
    drying: then the book holds the wet weight until the wool is dry. A change of state leaves an
    event even of no grams, so that it can be undone.
    """
    before = holding.state or state
    now = replace(holding, state=state)
    reading = mass_reading(holding.id, weight, day)
    entry = _entry(session, holding, now, reading)
    put(session, reading)
    put(session, now)
    if entry is None:
        return Weighed(None, 0)
    note = "" if before == state else step_note(before, state)
    lines = entry.lines or (Line(holding.id, 0),)
    event = post(session, entry.kind, day, lines, noted(note, [reading]))
    gained = sum(line.mg for line in event.lines if line.holding_id == holding.id)
    return Weighed(event, gained)


def _entry(session: Session, holding: Holding, now: Holding, reading: Reading) -> Entry | None:
    before, after = holding.state or "raw", now.state or "raw"
    balance = balance_of(session, holding.id)
    held = {holding.id: balance}
    if is_step(before, after):
        taken, made = Portion(holding, balance.mg), Portion(holding, reading.value)
        return woolbook.prepare(held, taken, made)
    if before != after:
        return _put_right(holding, reading.value - balance.mg)
    return woolbook.correct(held, now, reading, readings_of(session, holding.id))


def _put_right(holding: Holding, gained: int) -> Entry:
    return Entry("correct", (Line(holding.id, gained), Line(WEIGHING, -gained)))
