"""The tables that have one row each: the maker's settings, and the number of the last change."""

from typing import Any

from sqlalchemy import Column
from sqlmodel import Field, SQLModel

from app.book.plan import Losses
from app.book.settings import Prices, StepLosses
from app.store.tables.nested import Nested


class SettingsRow(SQLModel, table=True):
    """There is no row until the maker first changes a setting."""

    __tablename__ = "settings"

    id: str = Field(primary_key=True)
    length_unit: str
    mass_unit: str
    grist_unit: str
    gauge_unit: str
    decimal: str
    paper: str
    sureness_pct: float
    girth_mm: int
    losses: Any = Field(sa_column=Column(Nested(Losses), nullable=False))
    steps: Any = Field(sa_column=Column(Nested(StepLosses), nullable=False))
    prices: Any = Field(sa_column=Column(Nested(Prices), nullable=False))
    evening_minutes: int


class DataVersionRow(SQLModel, table=True):
    """Raised in every writing transaction, so that what was reckoned from the data can be kept."""

    __tablename__ = "data_version"

    id: int = Field(primary_key=True)
    version: int
