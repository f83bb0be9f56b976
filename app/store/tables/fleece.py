"""The table of fleeces."""

from sqlmodel import Field, SQLModel


class FleeceRow(SQLModel, table=True):
    __tablename__ = "fleece"

    id: str = Field(primary_key=True)
    name: str
    breed: str
    fibre: str
    yield_pct: float | None
    micron: float | None
    staple_mm: int | None
    colour: str
    colour_name: str
    source: str
    notes: str
