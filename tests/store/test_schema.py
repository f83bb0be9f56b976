"""The migrations make what the tables say, and the indexes serve the lists they are for."""

from typing import Any

import pytest
from sqlalchemy import Connection, Table, inspect
from sqlmodel import SQLModel

from app import paths
from app.store.engine import Store
from app.store.examine import HEAD
from app.store.tables.device import DeviceRow

TABLES = {table.name: table for table in (*SQLModel.metadata.sorted_tables, DeviceRow.__table__)}


@pytest.fixture
def connection(store: Store) -> Any:
    with store.reading() as session:
        yield session.connection()


def test_the_database_has_these_tables_and_no_others(connection: Connection) -> None:
    assert {*inspect(connection).get_table_names()} == {*TABLES, "alembic_version"}


@pytest.mark.parametrize("table", TABLES.values(), ids=TABLES.keys())
def test_columns_and_links_are_those_of_the_table(connection: Connection, table: Table) -> None:
    found = connection.exec_driver_sql(f"PRAGMA table_xinfo({table.name})").all()
    assert {row.name for row in found} == set(table.c.keys())
    may_be_empty = {column.name for column in table.c if column.nullable}
    required = {row.name for row in found if row.notnull or row.pk}
    assert set(table.c.keys()) - required == may_be_empty
    assert {row.name for row in found if row.pk} == {one.name for one in table.primary_key}
    assert _links_in_database(connection, table) == _links_declared(table)


@pytest.mark.parametrize("table", TABLES)
def test_tables_are_strict(connection: Connection, table: str) -> None:
    found = connection.exec_driver_sql(
        "SELECT strict FROM pragma_table_list WHERE name = ?", (table,)
    )
    assert found.scalar_one() == 1


def test_every_link_has_an_index(connection: Connection) -> None:
    for table in TABLES.values():
        starts = {one["column_names"][0] for one in inspect(connection).get_indexes(table.name)}
        starts |= {
            one["column_names"][0] for one in inspect(connection).get_unique_constraints(table.name)
        }
        starts.add(next(iter(table.primary_key)).name)
        assert {key.parent.name for key in table.foreign_keys} <= starts, table.name


@pytest.mark.parametrize(
    ("order", "index"),
    [
        ("balance.tex", "balance_shelf_tex"),
        ("balance.mm", "balance_shelf_mm"),
        ("balance.mg", "balance_shelf_mg"),
        ("balance.free_mm", "balance_shelf_free"),
        ("holding.code", "holding_shelf_code"),
        ("holding.day", "holding_shelf_day"),
    ],
)
def test_a_list_in_this_order_needs_no_sorting(
    connection: Connection, order: str, index: str
) -> None:
    steps = connection.exec_driver_sql(
        "EXPLAIN QUERY PLAN SELECT * FROM balance JOIN holding ON holding.id = balance.holding_id "
        f"WHERE {order.split('.')[0]}.shelf = 1 ORDER BY {order} LIMIT 60"
    ).all()
    text = " / ".join(step.detail for step in steps)
    assert index in text
    assert "TEMP B-TREE" not in text


def test_the_program_works_with_the_last_migration() -> None:
    files = sorted(paths.MIGRATIONS.glob("versions/*.py"))
    for file in files:
        assert f'revision = "{file.name[:4]}"' in file.read_text()
    assert files[-1].name[:4] == HEAD


def _links_in_database(connection: Connection, table: Table) -> set[tuple[str, str, str]]:
    found = connection.exec_driver_sql(f"PRAGMA foreign_key_list({table.name})").all()
    return {(row._mapping["from"], row.table, row.on_delete) for row in found}


def _links_declared(table: Table) -> set[tuple[str, str, str]]:
    return {
        (key.parent.name, key.column.table.name, key.ondelete or "") for key in table.foreign_keys
    }
