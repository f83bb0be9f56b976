"""Keep the book safe: take it out as a document, bring one in, make a backup."""

from pathlib import Path

from sqlmodel import Session

from app.book.book import Book
from app.book.exchange import dumps, loads
from app.store.backup import backup
from app.store.fill import fill
from app.store.records import load_book


def export_book(session: Session) -> str:
    """The whole book as an exchange document."""
    return dumps(load_book(session))


def import_book(session: Session, text: str | bytes) -> Book:
    """Bring an exchange document into an empty book, all of it or nothing; answers the book.

    ExchangeError where the document is wrong, Refused where there are records already.
    """
    book = loads(text)
    fill(session, book)
    return book


def back_up(folder: Path) -> Path:
    """A verified copy of the data in `folder`; answers its file."""
    return backup(folder)
