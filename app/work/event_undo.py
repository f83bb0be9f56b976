"""Undo something that happened to wool: a counter-event, and everything that went with it."""

from dataclasses import replace
from datetime import date

from sqlmodel import Session

from app.book import woolbook
from app.book.book import Book
from app.book.event import Event
from app.book.event_note import readings_noted, states_of
from app.book.holding import Holding
from app.book.reading import Reading
from app.book.words import SINKS
from app.store.records import get, load_book, post, put, remove
from app.store.skein_find import balance_of
from app.work.fleece_name import code_as

MAKES_HOLDINGS = frozenset({"arrive", "prepare", "spin", "wind", "correct", "rip"})
"""Events by which a holding first comes to the shelf."""


def undo_event(session: Session, seq: int, day: date, reason: str = "") -> Event | None:
    """Undo an event, for a reason if one is given; None where there is none of that number.

    A holding that it put away is on the shelf again, one that it made is put away, a fleece is
    back in the state it had, and the readings it came of are taken out.
    WoolBookError where what came of it has been used since.
    """
    book = load_book(session)
    event = next((one for one in book.events if one.seq == seq), None)
    if event is None:
        return None
    entry = woolbook.undo(event, book.events)
    undone = post(session, entry.kind, day, entry.lines, reason, undoes=seq)
    for holding in _holdings(session, event):
        _as_before(session, book, event, holding, day)
    for reading in readings_noted(event):
        if found := get(session, Reading, reading):
            remove(session, found)
    return undone


def _holdings(session: Session, event: Event) -> list[Holding]:
    ids = [line.holding_id for line in event.lines if line.holding_id not in SINKS]
    return [one for id in dict.fromkeys(ids) if (one := get(session, Holding, id))]


def _as_before(session: Session, book: Book, event: Event, holding: Holding, day: date) -> None:
    states = states_of(event)
    if event.kind == "put away":
        put(session, replace(holding, put_away=None))
    elif _came_with(book, event, holding) and not balance_of(session, holding.id).mg:
        put(session, replace(holding, put_away=day))
    elif states and holding.state == states[1]:
        code = code_as(session, book, holding, states[0])
        put(session, replace(holding, state=states[0], code=code))


def _came_with(book: Book, event: Event, holding: Holding) -> bool:
    """Whether a holding was first heard of in this event."""
    named = (
        one.seq for one in book.events if any(line.holding_id == holding.id for line in one.lines)
    )
    return event.kind in MAKES_HOLDINGS and min(named) == event.seq
