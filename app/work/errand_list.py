"""Lines the maker adds to the work list herself: add, tick, untick, take out."""

from dataclasses import replace
from datetime import date

from sqlmodel import Session

from app.book.errand import Errand
from app.store.records import get, put, remove


def add_errand(session: Session, errand: Errand) -> None:
    """Put a line of her own on the work list."""
    put(session, errand)


def tick_errand(session: Session, errand_id: str, day: date | None) -> None:
    """Tick a line off on `day`, or untick it with None; KeyError for a line that is gone."""
    put(session, replace(_errand(session, errand_id), done=day))


def remove_errand(session: Session, errand_id: str) -> Errand:
    """Take a line out; answers it, so that it can be put back. KeyError if it is gone."""
    errand = _errand(session, errand_id)
    remove(session, errand)
    return errand


def _errand(session: Session, errand_id: str) -> Errand:
    errand = get(session, Errand, errand_id)
    if errand is None:
        raise KeyError(errand_id)
    return errand
