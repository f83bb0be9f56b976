"""The table of readings."""

from datetime import date

from sqlmodel import Field, SQLModel

from app.store.tables.link import link


class ReadingRow(SQLModel, table=True):
    __tablename__ = "reading"

    id: str = Field(primary_key=True)
    holding_id: str = link("holding.id")
    kind: str
    value: int
    typed: str
    unit: str
    instrument: str
    day: date
    wool: str
    finished: bool
    girth_mm: int | None
    turns: float | None
    minute: int | None
