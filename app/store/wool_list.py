"""The wool book a page at a time: its events, the latest first, and what every holding holds."""

from collections.abc import Iterable
from typing import Any, Literal, NamedTuple

from sqlalchemy import Select, bindparam, select
from sqlmodel import Session

from app.book.event import Event, Line
from app.book.words import SINKS, HoldingKind
from app.store.tables.event import EventRow, LineRow
from app.store.tables.holding import BalanceRow, HoldingRow

EVENTS = 40
PAGE = 60

Shelf = Literal["yarn", "other"]
"""Yarn on the shelf, or all the rest: wool, garments, what is put away, and where wool goes."""

_event: Any = EventRow.__table__.c  # type: ignore[attr-defined]
_line: Any = LineRow.__table__.c  # type: ignore[attr-defined]
_holding: Any = HoldingRow.__table__.c  # type: ignore[attr-defined]
_balance: Any = BalanceRow.__table__.c  # type: ignore[attr-defined]


class BalanceLine(NamedTuple):
    """What one holding holds."""

    id: str
    code: str
    kind: HoldingKind
    fleece_id: str | None
    plan_id: str | None
    mg: int
    mm: int


_BALANCES: Select[Any] = (
    select(
        _holding.id,
        _holding.code,
        _holding.kind,
        _holding.fleece_id,
        _holding.plan_id,
        _balance.mg,
        _balance.mm,
    )
    .join(HoldingRow, _holding.id == _balance.holding_id)
    .where(_balance.shelf == bindparam("shelf"))
    .order_by(_balance.mg.desc(), _balance.holding_id.desc())
    .limit(PAGE + 1)
    .offset(bindparam("skip"))
)


def balance_page(session: Session, shelf: Shelf, page: int) -> list[BalanceLine]:
    """The holdings of one page, the heaviest first, and one more if there is a next page."""
    asked = {"shelf": shelf == "yarn", "skip": (page - 1) * PAGE}
    return [BalanceLine._make(row) for row in session.connection().execute(_BALANCES, asked)]


def event_page(session: Session, before: int | None, only_corrections: bool) -> list[Event]:
    """Events with their lines, the latest first, and one more if there are earlier ones; those
    `before` an event where that is given."""
    wanted = select(EventRow.__table__).order_by(_event.seq.desc()).limit(EVENTS + 1)  # type: ignore[attr-defined]
    if before is not None:
        wanted = wanted.where(_event.seq < before)
    if only_corrections:
        wanted = wanted.where(_event.kind.in_(("correct", "undo")))
    rows = session.connection().execute(wanted).all()
    lines = _lines(session, [row.seq for row in rows])
    return [Event(seq, kind, day, lines.get(seq, ()), *rest) for seq, kind, day, *rest in rows]


def undone_among(session: Session, seqs: Iterable[int]) -> frozenset[int]:
    """Those of some events that were undone, which is always later."""
    wanted = list(seqs)
    first = min(wanted, default=0)
    found = select(_event.undoes).where(_event.undoes.in_(wanted), _event.seq > first)
    return frozenset(session.connection().execute(found).scalars())


def sums(session: Session) -> dict[str, int]:
    """What each of the four holdings without a shelf holds, in mg."""
    found = select(_balance.holding_id, _balance.mg).where(_balance.holding_id.in_(SINKS))
    return {row.holding_id: row.mg for row in session.connection().execute(found)}


def tags(session: Session, ids: Iterable[str]) -> dict[str, BalanceLine]:
    """The holdings of some ids with what they hold."""
    wanted = (
        select(*_BALANCES.selected_columns)
        .join(HoldingRow, _holding.id == _balance.holding_id)
        .where(_holding.id.in_(sorted(set(ids))))
    )
    rows = session.connection().execute(wanted)
    return {line.id: line for line in map(BalanceLine._make, rows)}


def _lines(session: Session, seqs: list[int]) -> dict[int, tuple[Line, ...]]:
    wanted = (
        select(_line.event_seq, _line.holding_id, _line.mg, _line.mm)
        .where(_line.event_seq.in_(seqs))
        .order_by(_line.event_seq, _line.position)
    )
    found: dict[int, tuple[Line, ...]] = {}
    for seq, *line in session.connection().execute(wanted):
        found[seq] = (*found.get(seq, ()), Line(*line))
    return found
