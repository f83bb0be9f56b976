"""The table of fleeces."""

from typing import Any

from sqlalchemy import Column
from sqlmodel import Field, SQLModel

from app.book.spinning import FibreShare
from app.store.tables.nested import Nested


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
    blend: Any = Field(sa_column=Column(Nested(tuple[FibreShare, ...]), nullable=False))
