"""The table of lines the maker adds to the work list."""

from datetime import date

from sqlmodel import Field, SQLModel

from app.store.tables.link import link


class ErrandRow(SQLModel, table=True):
    __tablename__ = "errand"

    id: str = Field(primary_key=True)
    text: str
    kind: str
    plan_id: str | None = link("plan.id")
    done: date | None
