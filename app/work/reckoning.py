"""What is known now, and its reckoning: made once for each version of the data."""

from dataclasses import dataclass
from threading import Lock

from sqlmodel import Session

from app.book.book import Book
from app.planning import reckon
from app.planning.answers import Reckoning
from app.store.records import load_book
from app.store.version import data_version


@dataclass(frozen=True, slots=True)
class Known:
    """Everything that is known, and what follows from it."""

    book: Book
    reckoning: Reckoning


_kept: dict[str, tuple[int, Known]] = {}
_one_at_a_time = Lock()


def current(session: Session) -> Known:
    """The book and its reckoning as this session sees them.

    A state not yet saved is reckoned each time, and is not kept.
    """
    place, version = str(session.connection().engine.url), data_version(session)
    with _one_at_a_time:
        if place in _kept and _kept[place][0] == version:
            return _kept[place][1]
        book = load_book(session)
        known = Known(book, reckon(book))
        if version >= 0:
            _kept[place] = version, known
        return known
