"""Rows ticked off on a device: each tap has an id of its own, and is counted once."""

from datetime import date

from sqlalchemy import delete
from sqlalchemy.dialects.sqlite import insert
from sqlmodel import Session

from app.store.errors import plain_words
from app.store.tables.knitting import TapRow
from app.store.version import mark_changed

_taps = TapRow.__table__  # type: ignore[attr-defined]


@plain_words()
def first_time(session: Session, tap_id: str, day: date) -> bool:
    """True for a tap that was never counted; it counts as counted from now on."""
    new = insert(_taps).values(id=tap_id, day=day).on_conflict_do_nothing()
    counted = session.connection().execute(new).rowcount == 1
    if counted:
        mark_changed(session)
    return counted


@plain_words()
def forget_taps(session: Session, before: date) -> None:
    """Forget the ids of taps from before a day: no device keeps one that long."""
    session.connection().execute(delete(_taps).where(_taps.c.day < before))
