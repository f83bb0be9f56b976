"""The table of photos; the pictures are files beside the database."""

from datetime import date

from sqlmodel import Field, SQLModel

from app.store.tables.link import link


class PhotoRow(SQLModel, table=True):
    __tablename__ = "photo"

    id: str = Field(primary_key=True)
    sha256: str
    media: str
    bytes: int
    width: int
    height: int
    fleece_id: str | None = link("fleece.id")
    holding_id: str | None = link("holding.id")
    plan_id: str | None = link("plan.id")
    day: date | None
    caption: str
