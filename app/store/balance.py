"""What every holding holds and has promised, kept beside the wool book for lists to sort by."""

from collections.abc import Iterable
from typing import Any

from sqlalchemy import bindparam, delete, func, select, update
from sqlalchemy.dialects.sqlite import insert
from sqlmodel import Session

from app.book.event import Line
from app.book.finding import Finding
from app.book.holding import Holding
from app.book.plan import Plan, Promise
from app.book.words import OPEN_STATES, YARN_KINDS
from app.store.tables.event import LineRow
from app.store.tables.holding import BalanceRow, HoldingRow
from app.store.tables.plan import PlanRow, PromiseRow

_balance = BalanceRow.__table__  # type: ignore[attr-defined]
_holding = HoldingRow.__table__  # type: ignore[attr-defined]
_line = LineRow.__table__  # type: ignore[attr-defined]
_plan = PlanRow.__table__  # type: ignore[attr-defined]
_promise = PromiseRow.__table__  # type: ignore[attr-defined]


def _promised(holding_id: Any) -> Any:
    return (
        select(func.coalesce(func.sum(_promise.c.mm), 0))
        .join(_plan, _plan.c.id == _promise.c.plan_id)
        .where(_promise.c.holding_id == holding_id, _plan.c.state.in_(OPEN_STATES))
        .scalar_subquery()
    )


def _booked(column: Any) -> Any:
    return (
        select(func.coalesce(func.sum(column), 0))
        .where(_line.c.holding_id == _holding.c.id)
        .scalar_subquery()
    )


_PROMISED = _promised(_balance.c.holding_id)
_KEPT = ("holding_id", "shelf", "mg", "mm", "promised_mm")
_TRUE = select(
    _holding.c.id,
    _holding.c.shelf,
    _booked(_line.c.mg),
    _booked(_line.c.mm),
    _promised(_holding.c.id),
)
"""What the balances should say, by the wool book and the promises."""

_ADD = (
    update(_balance)
    .where(_balance.c.holding_id == bindparam("holding"))
    .values(
        mg=_balance.c.mg + bindparam("more_mg"),
        mm=_balance.c.mm + bindparam("more_mm"),
    )
)


def keep_balance(session: Session, holding: Holding) -> None:
    """Give a new holding an empty balance, or note whether an old one is still on the shelf."""
    shelf = holding.kind in YARN_KINDS and holding.put_away is None
    empty = {"holding_id": holding.id, "shelf": shelf, "mg": 0, "mm": 0, "promised_mm": 0}
    session.connection().execute(
        insert(_balance)
        .values(empty)
        .on_conflict_do_update(index_elements=["holding_id"], set_={"shelf": shelf})
    )


def add_lines(session: Session, lines: Iterable[Line]) -> None:
    """Add what an event moved to the balances of its holdings."""
    moved = [{"holding": one.holding_id, "more_mg": one.mg, "more_mm": one.mm} for one in lines]
    if moved:
        session.connection().execute(_ADD, moved)


def promised_holdings(session: Session, record: Any) -> set[str]:
    """The holdings whose promised metres hang on a promise or plan, as they now stand."""
    if isinstance(record, Promise):
        which = _promise.c.id == record.id
    elif isinstance(record, Plan):
        which = _promise.c.plan_id == record.id
    else:
        return set()
    return set(session.connection().scalars(select(_promise.c.holding_id).where(which)))


def keep_promised(session: Session, holding_ids: set[str]) -> None:
    """Add up anew what open plans are promised of these holdings."""
    if holding_ids:
        session.connection().execute(
            update(_balance)
            .where(_balance.c.holding_id.in_(holding_ids))
            .values(promised_mm=_PROMISED)
        )


def rebuild_balances(session: Session) -> None:
    """Make the balances anew from the wool book and the promises."""
    connection = session.connection()
    connection.execute(delete(_balance))
    connection.execute(insert(_balance).from_select(list(_KEPT), _TRUE))


def wrong_balances(session: Session) -> list[Finding]:
    """Where the balances do not say what the wool book and the promises add up to."""
    connection = session.connection()
    kept = {row[0]: row for row in connection.execute(select(*(_balance.c[one] for one in _KEPT)))}
    holdings = connection.execute(select(_holding.c.id, _holding.c.code))
    code = {row.id: row.code for row in holdings}
    return [
        _difference(code[true[0]], kept.get(true[0]), true)
        for true in connection.execute(_TRUE)
        if kept.get(true[0]) != true
    ]


def _difference(code: str, kept: Any, true: Any) -> Finding:
    text = f"The balance says {_said(kept)}; the wool book and the promises say {_said(true)}."
    return Finding(code, "balance", text)


def _said(row: Any) -> str:
    if row is None:
        return "nothing"
    _, _, mg, mm, promised_mm = row
    return f"{mg / 1000:g} g, {mm / 1000:g} m, {promised_mm / 1000:g} m of it promised"
