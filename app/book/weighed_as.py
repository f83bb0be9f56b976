"""In which state the wool of a holding was weighed when its grams were entered in the book."""

from app.book.book import Book
from app.book.event import Event
from app.book.event_note import states_of
from app.book.holding import Holding
from app.book.words import WoolState


def weighed_as(book: Book, holding: Holding) -> WoolState | None:
    """The state of a holding, but for one that dries after the wash: damp wool moves nothing, so
    until it is dry the book has the grams of the wool before the wash. A fleece that came in wet
    has its wet weight."""
    begun = drying_since(book, holding)
    states = states_of(begun) if begun else None
    return states[0] if states else holding.state


def drying_since(book: Book, holding: Holding) -> Event | None:
    """The event by which wool that dries now was wetted; None for wool that came in wet, or does
    not dry."""
    if holding.state != "drying":
        return None
    for event in reversed(_standing(book, holding)):
        states = states_of(event)
        if states and states[1] == "drying":
            return event
    return None


def _standing(book: Book, holding: Holding) -> list[Event]:
    undone = {one.undoes for one in book.events}
    return [
        one
        for one in sorted(book.events, key=lambda one: one.seq)
        if one.seq not in undone and any(line.holding_id == holding.id for line in one.lines)
    ]
