"""The tables of what holds wool, and of what it holds."""

from datetime import date
from typing import Any

from sqlalchemy import Column
from sqlmodel import Field, SQLModel

from app.book.holding import ColourAt
from app.store.tables.link import link
from app.store.tables.nested import Nested


class HoldingRow(SQLModel, table=True):
    """`shelf` is the database's own: yarn that has not been put away."""

    __tablename__ = "holding"

    id: str = Field(primary_key=True)
    kind: str
    code: str
    fleece_id: str | None = link("fleece.id")
    yarn_id: str | None = link("yarn.id")
    plan_id: str | None = link("plan.id")
    state: str | None
    day: date | None
    colour: str
    colour_name: str
    dye_lot: str
    price: str
    place: str
    notes: str
    put_away: date | None
    colours: Any = Field(sa_column=Column(Nested(tuple[ColourAt, ...]), nullable=False))
    look_again: date | None
    apart: bool
    shelf: bool


class BalanceRow(SQLModel, table=True):
    """What the wool book says a holding holds (mg, mm), and how much of it open plans have (mm).

    It can be rebuilt at any time, and is there so that lists filter and sort by index. The
    database itself derives `tex` (g/km, null where there is no yarn) and `free_mm`.
    """

    __tablename__ = "balance"

    holding_id: str = link("holding.id", primary_key=True)
    shelf: bool
    mg: int
    mm: int
    promised_mm: int
    tex: float | None
    free_mm: int
