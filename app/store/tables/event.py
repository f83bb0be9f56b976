"""The tables of the wool book."""

from datetime import date

from sqlmodel import Field, SQLModel

from app.store.tables.link import link


class EventRow(SQLModel, table=True):
    __tablename__ = "event"

    seq: int = Field(primary_key=True)
    kind: str
    day: date
    note: str
    undoes: int | None = link("event.seq")
    step: str
    passes: int


class LineRow(SQLModel, table=True):
    __tablename__ = "line"

    event_seq: int = link("event.seq", primary_key=True)
    position: int = Field(primary_key=True)
    holding_id: str = link("holding.id")
    mg: int
    mm: int
