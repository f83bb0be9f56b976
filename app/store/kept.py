"""Which table keeps which record; a record's fields are columns of the same names."""

from collections.abc import Iterable
from dataclasses import fields
from functools import cache
from typing import Any

from sqlalchemy import Column, Table
from sqlalchemy.dialects.sqlite import Insert, insert
from sqlmodel import Session

from app.book.errand import Errand
from app.book.fleece import Fleece
from app.book.holding import Holding
from app.book.knitting import Progress, Weighing
from app.book.mark import Mark
from app.book.pattern import Pattern
from app.book.person import Person
from app.book.photo import Photo
from app.book.plan import Part, Plan, Promise
from app.book.reading import Reading
from app.book.settings import Settings
from app.book.stint import Stint
from app.book.swatch import Swatch
from app.book.wheel import Wheel
from app.book.yarn import Yarn
from app.store.tables.errand import ErrandRow
from app.store.tables.fleece import FleeceRow
from app.store.tables.holding import HoldingRow
from app.store.tables.knitting import ProgressRow, WeighingRow
from app.store.tables.pattern import PatternRow
from app.store.tables.person import PersonRow
from app.store.tables.photo import PhotoRow
from app.store.tables.plan import PartRow, PlanRow, PromiseRow
from app.store.tables.reading import ReadingRow
from app.store.tables.settings import SettingsRow
from app.store.tables.stint import MarkRow, StintRow
from app.store.tables.swatch import SwatchRow
from app.store.tables.wheel import WheelRow
from app.store.tables.yarn import YarnRow

SETTINGS_ID = "settings"
"""The key of the one row of settings."""

ROWS: dict[type[Any], Any] = {
    Settings: SettingsRow,
    Person: PersonRow,
    Fleece: FleeceRow,
    Yarn: YarnRow,
    Swatch: SwatchRow,
    Pattern: PatternRow,
    Plan: PlanRow,
    Part: PartRow,
    Holding: HoldingRow,
    Reading: ReadingRow,
    Promise: PromiseRow,
    Errand: ErrandRow,
    Wheel: WheelRow,
    Stint: StintRow,
    Mark: MarkRow,
    Photo: PhotoRow,
    Progress: ProgressRow,
    Weighing: WeighingRow,
}
"""In an order in which every record comes after those it points to."""


def table_of(kind: type[Any]) -> Table:
    """The table that keeps records of `kind`; KeyError for a kind that has none."""
    table: Table = ROWS[kind].__table__
    return table


def columns_of(kind: type[Any]) -> list[Column[Any]]:
    """The columns of a record's fields, in the order of the fields."""
    table = table_of(kind)
    return [table.c[field.name] for field in fields(kind)]


def write(session: Session, kind: type[Any], records: Iterable[Any]) -> None:
    """Keep records of one kind, each in the place of its older self if there is one."""
    rows = [_row_of(record) for record in records]
    if rows:
        session.connection().execute(_keep(kind), rows)  # type: ignore[arg-type]


@cache
def _keep(kind: type[Any]) -> Insert:
    statement = insert(table_of(kind))
    changed = {field.name: statement.excluded[field.name] for field in fields(kind)}
    changed.pop("id", None)
    return statement.on_conflict_do_update(index_elements=["id"], set_=changed)


def _row_of(record: Any) -> dict[str, Any]:
    """The values of a record by column, with the key that settings lack."""
    key = {"id": SETTINGS_ID} if isinstance(record, Settings) else {}
    return key | {field.name: getattr(record, field.name) for field in fields(record)}
