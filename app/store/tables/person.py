"""The table of people to knit for."""

from typing import Any

from sqlalchemy import Column
from sqlmodel import Field, SQLModel

from app.book.person import Measure
from app.store.tables.nested import Nested


class PersonRow(SQLModel, table=True):
    __tablename__ = "person"

    id: str = Field(primary_key=True)
    name: str
    measures: Any = Field(sa_column=Column(Nested(tuple[Measure, ...]), nullable=False))
    notes: str
