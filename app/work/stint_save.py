"""Note time spent, and take a note out again."""

from sqlmodel import Session

from app.book.stint import Stint
from app.store.records import get, put, remove


def note_stint(session: Session, stint: Stint) -> None:
    """Keep a stint."""
    put(session, stint)


def remove_stint(session: Session, stint_id: str) -> Stint:
    """Take a stint out; answers it. KeyError if it is gone."""
    stint = get(session, Stint, stint_id)
    if stint is None:
        raise KeyError(stint_id)
    remove(session, stint)
    return stint
