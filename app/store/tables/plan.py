"""The tables of plans, their parts and what is promised to them."""

from datetime import date
from typing import Any

from sqlalchemy import Column
from sqlmodel import Field, SQLModel

from app.book.design import Design
from app.book.gauge import Gauge
from app.book.knitting import CastOn, Took
from app.book.person import Measure
from app.book.plan import Extra, Losses, RoleYarn, Worked
from app.book.sequence import Sequence
from app.book.shape import Shape
from app.store.tables.link import link
from app.store.tables.nested import Nested


class PlanRow(SQLModel, table=True):
    __tablename__ = "plan"

    id: str = Field(primary_key=True)
    name: str
    person_id: str | None = link("person.id")
    state: str
    priority: int
    wanted_by: date | None
    gauge: Any = Field(sa_column=Column(Nested(Gauge), nullable=True))
    yarns: Any = Field(sa_column=Column(Nested(tuple[RoleYarn, ...]), nullable=False))
    sureness_pct: float | None
    losses: Any = Field(sa_column=Column(Nested(Losses), nullable=True))
    design: Any = Field(sa_column=Column(Nested(Design), nullable=True))
    pattern_id: str | None = link("pattern.id")
    size: str
    follows: str
    cast_on: Any = Field(sa_column=Column(Nested(CastOn), nullable=True))
    finished_on: date | None
    took: Any = Field(sa_column=Column(Nested(tuple[Took, ...]), nullable=False))
    measured: Any = Field(sa_column=Column(Nested(tuple[Measure, ...]), nullable=False))
    notes: str


class PartRow(SQLModel, table=True):
    __tablename__ = "part"

    id: str = Field(primary_key=True)
    plan_id: str = link("plan.id")
    name: str
    shape: Any = Field(sa_column=Column(Nested(Shape), nullable=False))
    position: int
    copies: int
    gauge: Any = Field(sa_column=Column(Nested(Gauge), nullable=True))
    yarns: Any = Field(sa_column=Column(Nested(tuple[RoleYarn, ...]), nullable=False))
    edges: str
    shape_u_pct: float
    place: str
    in_round: bool
    extras: Any = Field(sa_column=Column(Nested(tuple[Extra, ...]), nullable=False))
    worked: Any = Field(sa_column=Column(Nested(Worked), nullable=True))
    sequence: Any = Field(sa_column=Column(Nested(Sequence), nullable=True))
    notes: str


class PromiseRow(SQLModel, table=True):
    __tablename__ = "promise"

    id: str = Field(primary_key=True)
    plan_id: str = link("plan.id")
    part_id: str = link("part.id")
    holding_id: str = link("holding.id")
    mm: int
    role: str
    state: str
    why: str
    position: int
    from_inside: bool
