"""How the list of skeins is asked of the database: its filters and orders, as statements.

A statement is built once for each combination of filters.
"""

from dataclasses import dataclass
from functools import cache
from typing import Any, Literal, cast

from sqlalchemy import (
    ColumnElement,
    Integer,
    Select,
    bindparam,
    case,
    func,
    or_,
    select,
    type_coerce,
)

from app.book.words import YARN_KINDS
from app.store.tables.holding import BalanceRow, HoldingRow
from app.store.tables.reading import ReadingRow
from app.store.tables.yarn import YarnRow

PAGE = 60

SkeinState = Literal["", "free", "partly promised", "promised", "not finished", "put away"]
SkeinSort = Literal["grist", "code", "metres", "grams", "day", "colour"]


@dataclass(frozen=True, slots=True)
class SkeinFilter:
    """Which skeins, in which order. Grist in tex, of which the thinnest yarn has the least; `page`
    counts from 1; an empty state means all that is on the shelf."""

    text: str = ""
    fibre: str = ""
    colour: str = ""
    yarn_id: str = ""
    least_tex: float | None = None
    most_tex: float | None = None
    state: SkeinState = ""
    sort: SkeinSort = "grist"
    page: int = 1


_holdings: Any = HoldingRow.__table__  # type: ignore[attr-defined]
_balances: Any = BalanceRow.__table__  # type: ignore[attr-defined]
_yarns: Any = YarnRow.__table__  # type: ignore[attr-defined]
_readings: Any = ReadingRow.__table__  # type: ignore[attr-defined]
_holding, _balance, _yarn, _reading = _holdings.c, _balances.c, _yarns.c, _readings.c

_finished = (
    select(func.max(_reading.finished, type_=_balance.mm.type))
    .where(_reading.holding_id == _balance.holding_id, _reading.kind == "length")
    .scalar_subquery()
)

_colour = func.coalesce(func.nullif(_holding.colour, ""), _yarn.colour, "")
_colour_name = func.coalesce(func.nullif(_holding.colour_name, ""), _yarn.colour_name, "")

_COLUMNS: tuple[Any, ...] = (
    _holding.id,
    _holding.code,
    _colour,
    _colour_name,
    _holding.place,
    _holding.day,
    _holding.put_away,
    _holding.yarn_id,
    _yarn.name,
    _balance.mg,
    _balance.mm,
    _balance.promised_mm,
    _balance.free_mm,
    _balance.tex,
    _finished,
)


def _has(text: Any, name: str) -> ColumnElement[bool]:
    return cast(ColumnElement[bool], text.like(bindparam(name), escape="\\"))


_SEARCHED = (_holding.code, _yarn.name, _colour_name, _holding.place, _holding.notes)

_CONDITIONS: dict[str, ColumnElement[bool]] = {
    "text": or_(*(_has(one, "text") for one in _SEARCHED)),
    "fibre": _yarn.fibre == bindparam("fibre"),
    "colour": _has(_colour_name, "colour"),
    "yarn_id": _holding.yarn_id == bindparam("yarn_id"),
    "least_tex": _balance.tex >= bindparam("least_tex"),
    "most_tex": _balance.tex <= bindparam("most_tex"),
}

_STATES: dict[SkeinState, tuple[ColumnElement[bool], ...]] = {
    "": (),
    "free": (_balance.promised_mm == 0,),
    "partly promised": (_balance.promised_mm > 0, _balance.free_mm + 0 > 0),
    "promised": (_balance.promised_mm > 0, _balance.free_mm + 0 <= 0),
    "not finished": (_finished == 0,),
}


def asked_of(wanted: SkeinFilter) -> dict[str, str | float]:
    """The filters in use, by the name of their parameter."""
    given: dict[str, str | float | None] = {
        "text": _pattern(wanted.text),
        "fibre": wanted.fibre,
        "colour": _pattern(wanted.colour),
        "yarn_id": wanted.yarn_id,
        "least_tex": wanted.least_tex,
        "most_tex": wanted.most_tex,
    }
    return {name: value for name, value in given.items() if value not in (None, "")}


def _pattern(text: str) -> str:
    plain = text.replace("\\", "\\\\").replace("%", "\\%").replace("_", "\\_")
    return f"%{plain}%" if text else ""


@cache
def page_statement(state: SkeinState, sort: SkeinSort, asked: frozenset[str]) -> Select[Any]:
    statement: Select[Any] = _joined(_COLUMNS).where(*_where(state, sort, asked))
    return statement.order_by(*_order(sort)).limit(PAGE + 1).offset(bindparam("skip"))


@cache
def total_statement(state: SkeinState, asked: frozenset[str]) -> Select[Any]:
    amounts = (_balance.mg, _balance.mm, _balance.free_mm)
    sums = (func.coalesce(func.sum(one), 0) for one in amounts)
    return _joined((func.count(), *sums)).where(*_where(state, "grist", asked))


@cache
def ids_statement(state: SkeinState, asked: frozenset[str]) -> Select[Any]:
    return _joined((_balance.holding_id,)).where(*_where(state, "grist", asked))


def _joined(columns: tuple[Any, ...]) -> Select[Any]:
    return (
        select(*columns)
        .select_from(_balances)
        .join(_holdings, _holding.id == _balance.holding_id)
        .outerjoin(_yarns, _yarn.id == _holding.yarn_id)
    )


def _where(state: SkeinState, sort: SkeinSort, asked: frozenset[str]) -> list[ColumnElement[bool]]:
    filters = [condition for name, condition in _CONDITIONS.items() if name in asked]
    if state == "put away":
        gone = or_(_holding.put_away.is_not(None), _balance.mg == 0)
        return [_holding.kind.in_(sorted(YARN_KINDS)), gone, *filters]
    # Plus nothing: so that the index of the wanted order is used and not one of the grams.
    holds_some = _balance.mg + 0 > 0
    return [_on_shelf(sort, "yarn_id" in asked), holds_some, *_STATES[state], *filters]


def _on_shelf(sort: SkeinSort, of_one_yarn: bool) -> ColumnElement[bool]:
    """Both tables know what is on the shelf; the one that knows the order is asked by its index,
    except where the skeins of one yarn are few enough to sort."""
    table = _balance if sort in ("grist", "metres", "grams") else _holding
    shelf = type_coerce(table.shelf, Integer)
    return shelf + 0 == 1 if of_one_yarn else shelf == 1


def _order(sort: SkeinSort) -> list[Any]:
    return {
        "grist": [_balance.tex, _balance.holding_id],
        "code": [_holding.code, _holding.id],
        "metres": [_balance.mm.desc(), _balance.holding_id.desc()],
        "grams": [_balance.mg.desc(), _balance.holding_id.desc()],
        "day": [_holding.day.desc(), _holding.id.desc()],
        "colour": [_lightness(), _holding.code],
    }[sort]


def _lightness() -> ColumnElement[int]:
    """Dark to light by the weights of Rec. ITU-R BT.709; what has no colour comes last."""
    own, of_yarn = _holding.colour, _yarn.colour
    return case((own != "", _light(own)), (of_yarn != "", _light(of_yarn)), else_=1 << 30)


def _light(colour: Any) -> Any:
    red, green, blue = (_pair(colour, place) for place in (2, 4, 6))
    return 2126 * red + 7152 * green + 722 * blue


def _pair(colour: Any, place: int) -> Any:
    """The number that two hexadecimal digits of a colour make."""
    high, low = (
        func.instr("0123456789abcdef", func.substr(colour, at, 1)) - 1 for at in (place, place + 1)
    )
    return high * 16 + low
