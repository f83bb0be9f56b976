"""Keep the book safe: take it out as a document or a ZIP with its pictures, bring one in, make a
backup."""

from pathlib import Path
from typing import IO

from sqlmodel import Session

from app.book.book import Book
from app.book.exchange import dumps, loads
from app.store.backup import backup
from app.store.fill import fill
from app.store.records import load_book
from app.work.photo_check import lost_pictures
from app.work.photo_zip import BEGINNING, read_zip


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


def import_file(session: Session, file: IO[bytes]) -> Book:
    """Bring in a document, or a ZIP of one with its pictures, whichever the file holds.

    Errors as `import_book`. The photos of a bare document come without their pictures.
    """
    zipped = file.read(len(BEGINNING)) == BEGINNING
    file.seek(0)
    return read_zip(session, file) if zipped else import_book(session, file.read())


def without_pictures(session: Session, book: Book) -> str:
    """What to say after a book was brought in without the pictures of its photos; else empty."""
    count = sum(1 for _ in lost_pictures(session, book))
    if not count:
        return ""
    photos = "one photo has no picture" if count == 1 else f"{count} photos have no picture"
    return f"{photos.capitalize()}: the ZIP of an export has them."


def back_up(folder: Path) -> Path:
    """A verified copy of the data in `folder`; answers its file."""
    return backup(folder)
