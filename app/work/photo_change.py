"""Change what is written of a photo, or take it out; its picture stays until it is swept."""

from dataclasses import replace
from datetime import date

from sqlmodel import Session

from app.book.photo import Photo
from app.store.records import put, remove


def change_photo(session: Session, photo: Photo, day: date | None, caption: str) -> None:
    """Give a photo another day and caption."""
    put(session, replace(photo, day=day, caption=caption))


def remove_photo(session: Session, photo: Photo) -> None:
    """Take a photo out; put back by undo for as long as the program runs."""
    remove(session, photo)
