"""The table of written patterns."""

from datetime import date
from typing import Any

from sqlalchemy import Column
from sqlmodel import Field, SQLModel

from app.book.gauge import Gauge
from app.book.pattern import PatternSize, Share
from app.store.tables.nested import Nested


class PatternRow(SQLModel, table=True):
    __tablename__ = "pattern"

    id: str = Field(primary_key=True)
    name: str
    gauge: Any = Field(sa_column=Column(Nested(Gauge), nullable=False))
    source: str
    sizes: Any = Field(sa_column=Column(Nested(tuple[PatternSize, ...]), nullable=False))
    shares: Any = Field(sa_column=Column(Nested(tuple[Share, ...]), nullable=False))
    put_away: date | None
    notes: str
