"""Records in and out of the database, and events into the wool book."""

from collections.abc import Callable
from functools import cache
from typing import Any, TypeVar, get_args

from sqlalchemy import Select, bindparam, delete, select
from sqlmodel import Session

from app.book.book import Book
from app.book.errand import Errand
from app.book.fleece import Fleece
from app.book.holding import Holding
from app.book.knitting import Progress, Weighing
from app.book.mark import Mark
from app.book.pattern import Pattern
from app.book.person import Person
from app.book.photo import Photo
from app.book.plan import Part, Plan, Promise
from app.book.reading import Reading
from app.book.settings import Settings
from app.book.stint import Stint
from app.book.swatch import Swatch
from app.book.wheel import Wheel
from app.book.yarn import Yarn
from app.store.balance import keep_balance, keep_promised, promised_holdings
from app.store.errors import Refused, plain_words
from app.store.events import load_events, post
from app.store.kept import columns_of, table_of, write
from app.store.version import data_version, mark_changed

__all__ = ["data_version", "get", "load_book", "post", "put", "remove"]

R = TypeVar("R")

Removable = (
    Promise | Part | Errand | Plan | Reading | Yarn | Stint | Mark | Photo | Progress | Weighing
)
REMOVABLE = get_args(Removable)


def load_book(session: Session) -> Book:
    """Everything, in one statement a table."""
    return Book(
        settings=next(iter(_all(session, Settings)), Settings()),
        people=_all(session, Person),
        fleeces=_all(session, Fleece),
        yarns=_all(session, Yarn),
        swatches=_all(session, Swatch),
        patterns=_all(session, Pattern),
        holdings=_all(session, Holding),
        readings=_all(session, Reading),
        events=load_events(session),
        plans=_all(session, Plan),
        parts=_all(session, Part),
        promises=_all(session, Promise),
        errands=_all(session, Errand),
        wheels=_all(session, Wheel),
        stints=_all(session, Stint),
        marks=_all(session, Mark),
        photos=_all(session, Photo),
        progress=_all(session, Progress),
        weighings=_all(session, Weighing),
    )


def get(session: Session, kind: type[R], id: str) -> R | None:
    """The record of `kind` with this id, or None; the settings have the id "settings"."""
    made: Any = kind
    row = session.connection().execute(_by_id(made), {"wanted": id}).first()
    return None if row is None else made(*row)


@plain_words()
def put(session: Session, record: Any) -> None:
    """Keep a record, in the place of its older self if there is one.

    Refused where it points to nothing, or takes a label that is in use.
    """
    before = promised_holdings(session, record)
    write(session, type(record), [record])
    if isinstance(record, Holding):
        keep_balance(session, record)
    keep_promised(session, before | promised_holdings(session, record))
    mark_changed(session)


@plain_words()
def remove(session: Session, record: Removable) -> None:
    """Take out a record of REMOVABLE; Refused while something points to it.

    A plan goes with its parts and photos. Everything else has a history and is put away instead.
    """
    if not isinstance(record, REMOVABLE):
        raise Refused("What has a history is put away, not removed.")
    before = promised_holdings(session, record) if isinstance(record, Promise) else set()
    if isinstance(record, Plan):
        _delete(session, Part, "plan_id", record.id)
        _delete(session, Photo, "plan_id", record.id)
    _delete(session, type(record), "id", record.id)
    keep_promised(session, before)
    mark_changed(session)


@cache
def _by_id(kind: Any) -> Select[Any]:
    return select(*columns_of(kind)).where(table_of(kind).c.id == bindparam("wanted"))


def _all(session: Session, kind: Callable[..., R]) -> tuple[R, ...]:
    rows = session.connection().execute(select(*columns_of(kind)))  # type: ignore[arg-type]
    return tuple(kind(*row) for row in rows)


def _delete(session: Session, kind: type[Any], column: str, id: str) -> None:
    table = table_of(kind)
    session.connection().execute(delete(table).where(table.c[column] == id))
