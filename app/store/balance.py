"""What every holding holds and has promised, kept beside the wool book for lists to sort by."""

from collections.abc import Iterable
from typing import Any

from sqlalchemy import bindparam, func, select, update
from sqlalchemy.dialects.sqlite import insert
from sqlmodel import Session

from app.book.event import Line
from app.book.holding import Holding
from app.book.plan import Plan, Promise
from app.book.words import YARN_KINDS
from app.store.tables.holding import BalanceRow
from app.store.tables.plan import PlanRow, PromiseRow

_balance = BalanceRow.__table__  # type: ignore[attr-defined]
_plan = PlanRow.__table__  # type: ignore[attr-defined]
_promise = PromiseRow.__table__  # type: ignore[attr-defined]

OPEN_STATES = ("intended", "being knit")
"""States of a plan whose promises still tie up yarn."""

_PROMISED = (
    select(func.coalesce(func.sum(_promise.c.mm), 0))
    .join(_plan, _plan.c.id == _promise.c.plan_id)
    .where(_promise.c.holding_id == _balance.c.holding_id, _plan.c.state.in_(OPEN_STATES))
    .scalar_subquery()
)

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
