"""What the routes of photos have in common: finding one, and what it is of."""

from app.book.book import Book
from app.book.photo import Photo
from app.book.stamp import stamp
from app.web.errors import Missing, Stale
from app.web.forms.reader import Reader
from app.web.pages.photos import KIND_OF
from app.work.photo_find import Subject, photo_of_id, subject_of


def subject_or_missing(book: Book, room: str, id: str) -> Subject:
    """The fleece, skein or garment at an address; Missing where there is none."""
    kind = KIND_OF.get(room)
    found = subject_of(book, kind, id) if kind else None
    if found is None:
        raise Missing(f"This {kind or 'page'}")
    return found


def photo_or_missing(book: Book, photo_id: str) -> Photo:
    """The photo at an address; Missing where there is none."""
    photo = photo_of_id(book, photo_id)
    if photo is None:
        raise Missing("This photo")
    return photo


def as_opened(photo: Photo, reader: Reader) -> None:
    """Stale where the photo was changed since the form was opened."""
    if reader.stamp != stamp(photo):
        raise Stale("This photo", f"/photos/{photo.id}")
