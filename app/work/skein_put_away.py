"""Put a skein away for good: given to somebody, or lost. Undoing the event takes it back."""

from dataclasses import replace
from datetime import date
from typing import Literal

from sqlmodel import Session

from app.book import woolbook
from app.book.book import Book
from app.book.event import Event
from app.book.holding import Holding
from app.book.woolbook import Portion
from app.store.records import post, put
from app.store.skein_find import balance_of

Going = Literal["given away", "lost or used up"]


def put_away(session: Session, skein: Holding, going: Going, day: date) -> Event:
    """Empty a skein for good and take it off the shelf; the day is kept with it."""
    held = balance_of(session, skein.id)
    if going == "given away":
        entry = woolbook.give_away({skein.id: held}, Portion(skein, held.mg, held.mm))
    else:
        entry = woolbook.put_away({skein.id: held}, skein)
    put(session, replace(skein, put_away=day))
    return post(session, entry.kind, day, entry.lines)


def emptied_by(book: Book, holding_id: str) -> Event | None:
    """The event that put a holding away, unless it was undone since."""
    events = events_of(book, holding_id)
    undone = {one.undoes for one in events}
    left = [one for one in events if one.kind == "put away" and one.seq not in undone]
    return left[-1] if left else None


def events_of(book: Book, holding_id: str) -> list[Event]:
    """What happened to a holding, in the order in which the book learned of it."""
    return [
        event
        for event in sorted(book.events, key=lambda one: one.seq)
        if any(line.holding_id == holding_id for line in event.lines)
    ]
