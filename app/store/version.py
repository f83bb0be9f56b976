"""The number of the last change, by which a reckoning is kept for as long as it is true."""

from itertools import count
from typing import cast

from sqlalchemy import event, select, update
from sqlmodel import Session

from app.store.tables.settings import DataVersionRow

_table = DataVersionRow.__table__  # type: ignore[attr-defined]
_unsaved = count(-1, -1)


def data_version(session: Session) -> int:
    """A number that is never the same for two states of the data in this run of the program.

    A state not yet saved has a negative number of its own, which never comes back: what was
    reckoned from a change that is then given up is not taken for the truth later.
    """
    unsaved = session.info.get("data_version")
    if unsaved is not None:
        return cast(int, unsaved)
    return cast(int, session.connection().scalar(select(_table.c.version)))


def mark_changed(session: Session) -> None:
    """Note that the session's data now differs from what was saved."""
    session.info["data_version"] = next(_unsaved)


def raise_version(session: Session) -> None:
    """Raise the number of the last change; part of every writing transaction."""
    session.connection().execute(update(_table).values(version=_table.c.version + 1))


@event.listens_for(Session, "after_commit")
@event.listens_for(Session, "after_rollback")
def _forget_unsaved(session: Session) -> None:
    session.info.pop("data_version", None)
