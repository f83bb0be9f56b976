"""The table of yarns."""

from typing import Any

from sqlalchemy import Column
from sqlmodel import Field, SQLModel

from app.book.spinning import FibreShare, Spinning
from app.store.tables.link import link
from app.store.tables.nested import Nested


class YarnRow(SQLModel, table=True):
    __tablename__ = "yarn"

    id: str = Field(primary_key=True)
    name: str
    fibre: str
    plies: int | None
    twist: str
    fleece_id: str | None = link("fleece.id")
    target_tex: float | None
    bought: bool
    ball_mg: int | None
    ball_mm: int | None
    colour: str
    colour_name: str
    notes: str
    blend: Any = Field(sa_column=Column(Nested(tuple[FibreShare, ...]), nullable=False))
    spinning: Any = Field(sa_column=Column(Nested(Spinning), nullable=True))
