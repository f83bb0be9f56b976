"""The tables of a garment on the needles."""

from datetime import date

from sqlmodel import Field, SQLModel

from app.store.tables.link import link


class ProgressRow(SQLModel, table=True):
    __tablename__ = "progress"

    id: str = Field(primary_key=True)
    plan_id: str = link("plan.id")
    part_id: str = link("part.id")
    piece: int
    rows: int
    day: date


class WeighingRow(SQLModel, table=True):
    __tablename__ = "weighing"

    id: str = Field(primary_key=True)
    plan_id: str = link("plan.id")
    part_id: str = link("part.id")
    piece: int
    rows: int
    holding_id: str = link("holding.id")
    mg: int
    typed: str
    scale_mg: int
    day: date
    minute: int | None


class TapRow(SQLModel, table=True):
    """A row ticked off on some device, by the id the device gave it: so none is counted twice."""

    __tablename__ = "tap"

    id: str = Field(primary_key=True)
    day: date
