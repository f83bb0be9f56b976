"""The tables of time spent, and of what was decided about what is learned from it."""

from datetime import date

from sqlmodel import Field, SQLModel

from app.store.tables.link import link


class StintRow(SQLModel, table=True):
    __tablename__ = "stint"

    id: str = Field(primary_key=True)
    day: date
    work: str
    minutes: int
    mg: int | None
    mm: int | None
    holding_id: str | None = link("holding.id")
    yarn_id: str | None = link("yarn.id")
    plan_id: str | None = link("plan.id")
    note: str


class MarkRow(SQLModel, table=True):
    __tablename__ = "mark"

    id: str = Field(primary_key=True)
    verdict: str
    day: date
    why: str
