"""Whether the pictures of all photos are there, and as they were."""

from collections.abc import Iterator

from sqlmodel import Session

from app.book.book import Book
from app.book.finding import Finding, name_of
from app.store.photos import file_name, folder_of, state_of


def lost_pictures(session: Session, book: Book) -> Iterator[Finding]:
    """A finding for each photo whose file is missing or damaged."""
    folder = folder_of(session)
    for photo in book.photos:
        wrong = state_of(folder, photo.sha256)
        if wrong:
            text = f"Its picture is {wrong}: photos/{file_name(photo.sha256)}."
            yield Finding(name_of(book, photo), "sha256", text)
