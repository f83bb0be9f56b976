"""The table of yarns."""

from sqlmodel import Field, SQLModel

from app.store.tables.link import link


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
