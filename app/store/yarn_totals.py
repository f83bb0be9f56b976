"""What the skeins of each yarn hold together: one statement, whatever the number of yarns."""

from typing import Any, NamedTuple

from sqlalchemy import and_, case, func, select
from sqlmodel import Session

from app.store.tables.holding import BalanceRow, HoldingRow
from app.store.tables.yarn import YarnRow


class YarnTotal(NamedTuple):
    """A yarn and the sums over its skeins on the shelf that hold something.

    `measured` of them have a linear density and weigh `measured_mg`; `tex_sum` and
    `tex_square_sum` are over those.
    """

    id: str
    name: str
    fibre: str
    plies: int | None
    twist: str
    bought: bool
    colour: str
    colour_name: str
    target_tex: float | None
    skeins: int
    mg: int
    mm: int
    free_mm: int
    measured_mg: int
    measured: int
    tex_sum: float
    tex_square_sum: float


_holdings: Any = HoldingRow.__table__  # type: ignore[attr-defined]
_balances: Any = BalanceRow.__table__  # type: ignore[attr-defined]
_yarns: Any = YarnRow.__table__  # type: ignore[attr-defined]
_holding, _balance, _yarn = _holdings.c, _balances.c, _yarns.c


def yarn_totals(session: Session, yarn_id: str | None = None) -> list[YarnTotal]:
    """Every yarn in the order of its name, or the one asked for, with what it holds."""
    on_shelf = and_(_balance.holding_id == _holding.id, _balance.shelf, _balance.mg > 0)
    statement = (
        select(*_described(), *_sums())
        .select_from(_yarns)
        .outerjoin(_holdings, _holding.yarn_id == _yarn.id)
        .outerjoin(_balances, on_shelf)
        .group_by(_yarn.id)
        .order_by(func.lower(_yarn.name), _yarn.id)
    )
    if yarn_id is not None:
        statement = statement.where(_yarn.id == yarn_id)
    return [YarnTotal._make(row) for row in session.connection().execute(statement).all()]


def yarn_names(session: Session) -> dict[str, str]:
    """The names of all yarns by id, in the order of the names."""
    statement = select(_yarn.id, _yarn.name).order_by(func.lower(_yarn.name), _yarn.id)
    return {row.id: row.name for row in session.connection().execute(statement)}


def _described() -> tuple[Any, ...]:
    return (
        _yarn.id,
        _yarn.name,
        _yarn.fibre,
        _yarn.plies,
        _yarn.twist,
        _yarn.bought,
        _yarn.colour,
        _yarn.colour_name,
        _yarn.target_tex,
    )


def _sums() -> tuple[Any, ...]:
    return (
        func.count(_balance.holding_id),
        func.coalesce(func.sum(_balance.mg), 0),
        func.coalesce(func.sum(_balance.mm), 0),
        func.coalesce(func.sum(_balance.free_mm), 0),
        func.coalesce(func.sum(case((_balance.mm > 0, _balance.mg))), 0),
        func.count(_balance.tex),
        func.total(_balance.tex),
        func.total(_balance.tex * _balance.tex),
    )
