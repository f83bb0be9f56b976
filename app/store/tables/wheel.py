"""The table of wheels and spindles."""

from datetime import date
from typing import Any

from sqlalchemy import Column
from sqlmodel import Field, SQLModel

from app.book.wheel import Ratio
from app.store.tables.nested import Nested


class WheelRow(SQLModel, table=True):
    __tablename__ = "wheel"

    id: str = Field(primary_key=True)
    name: str
    kind: str
    ratios: Any = Field(sa_column=Column(Nested(tuple[Ratio, ...]), nullable=False))
    bobbin_mg: int | None
    notes: str
    put_away: date | None
