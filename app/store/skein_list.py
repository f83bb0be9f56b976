"""The list of skeins: filtered and sorted in the database, by index, a page at a time.

Rows come as named tuples, which a template reads faster than rows of the database's own kind.
"""

from datetime import date
from typing import NamedTuple

from sqlalchemy import select
from sqlmodel import Session

from app.store.skein_query import (
    PAGE,
    SkeinFilter,
    SkeinSort,
    SkeinState,
    asked_of,
    ids_statement,
    page_statement,
    total_statement,
)
from app.store.tables.yarn import YarnRow

__all__ = [
    "PAGE",
    "SkeinFilter",
    "SkeinLine",
    "SkeinSort",
    "SkeinState",
    "SkeinTotal",
    "fibres",
    "skein_ids",
    "skein_page",
    "skein_total",
]


class SkeinLine(NamedTuple):
    """A skein in the list, in its own colour or else its yarn's; `finished` is 1 or 0, None where
    its length was never measured."""

    id: str
    code: str
    colour: str
    colour_name: str
    place: str
    day: date | None
    put_away: date | None
    yarn_id: str | None
    yarn: str | None
    mg: int
    mm: int
    promised_mm: int
    free_mm: int
    tex: float | None
    finished: int | None


class SkeinTotal(NamedTuple):
    """How many skeins there are and what they hold."""

    skeins: int
    mg: int
    mm: int
    free_mm: int


def skein_page(session: Session, wanted: SkeinFilter) -> list[SkeinLine]:
    """The skeins of one page, and one more if there is a next page."""
    asked = asked_of(wanted)
    statement = page_statement(wanted.state, wanted.sort, frozenset(asked))
    values = {**asked, "skip": (wanted.page - 1) * PAGE}
    return [SkeinLine._make(row) for row in session.connection().execute(statement, values)]


def skein_total(session: Session, wanted: SkeinFilter) -> SkeinTotal:
    """What all skeins of the filter hold together."""
    asked = asked_of(wanted)
    statement = total_statement(wanted.state, frozenset(asked))
    return SkeinTotal._make(session.connection().execute(statement, asked).one())


def skein_ids(session: Session, wanted: SkeinFilter) -> list[str]:
    """All skeins of the filter, in no promised order."""
    asked = asked_of(wanted)
    statement = ids_statement(wanted.state, frozenset(asked))
    return list(session.connection().execute(statement, asked).scalars())


def fibres(session: Session) -> list[str]:
    """The fibres of the maker's yarns, in the order of the alphabet."""
    fibre = YarnRow.__table__.c.fibre  # type: ignore[attr-defined]
    statement = select(fibre).distinct().order_by(fibre)
    return list(session.connection().execute(statement).scalars())
