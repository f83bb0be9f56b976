"""The table of swatches."""

from datetime import date
from typing import Any

from sqlalchemy import Column
from sqlmodel import Field, SQLModel

from app.book.swatch import Count
from app.store.tables.link import link
from app.store.tables.nested import Nested


class SwatchRow(SQLModel, table=True):
    __tablename__ = "swatch"

    id: str = Field(primary_key=True)
    name: str
    yarn_id: str | None = link("yarn.id")
    needle_mm: float | None
    pattern: str
    worked: Any = Field(sa_column=Column(Nested(Count), nullable=True))
    finished: Any = Field(sa_column=Column(Nested(Count), nullable=True))
    weight_mg: int | None
    scale_mg: int
    whole_stitches: float | None
    unravelled: float | None
    thread_mm: int | None
    day: date | None
    put_away: date | None
    notes: str
