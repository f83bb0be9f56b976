"""All tables with what each answers, and what a search finds in their names, rows and sources."""

from dataclasses import dataclass
from functools import lru_cache

from app.book.settings import Settings
from app.web.pages.table import GROUPS, Table
from app.web.pages.table_rows import ShownRow, printed
from app.web.pages.tables import all_tables
from app.web.shown import Shown

MOST_ROWS = 12
"""Rows of one table a search shows; the table has the rest."""


@dataclass(frozen=True, slots=True)
class Grouped:
    """The tables under one heading."""

    heading: str
    tables: tuple[Table, ...]


@dataclass(frozen=True, slots=True)
class FoundRow:
    """A row that was found: its cells under their words, in one line."""

    id: str
    word: str
    cells: str
    standing: str
    source: str


@dataclass(frozen=True, slots=True)
class FoundTable:
    """A table a search found, with its rows that answer it, and how many more there are."""

    table: Table
    rows: tuple[FoundRow, ...]
    more: int


@dataclass(frozen=True, slots=True)
class TablesPage:
    """`q` is what was looked for, `found` what was found; without a `q`, all tables."""

    q: str
    groups: tuple[Grouped, ...]
    found: tuple[FoundTable, ...]


@dataclass(frozen=True, slots=True)
class _Kept:
    """A row with all the text it can be found by."""

    text: str
    row: FoundRow


def tables_page(q: str, shown: Shown) -> TablesPage:
    """The list, or what a search for words finds: every word must stand in the name or the row."""
    if not q:
        return TablesPage("", _groups(), ())
    words = q.casefold().split()
    looked = (_found(table, words, shown.settings) for table in all_tables().values())
    return TablesPage(q, (), tuple(one for one in looked if one))


def _groups() -> tuple[Grouped, ...]:
    tables = all_tables().values()
    groups = (Grouped(one, tuple(t for t in tables if t.group == one)) for one in GROUPS)
    return tuple(one for one in groups if one.tables)


def _found(table: Table, words: list[str], settings: Settings) -> FoundTable | None:
    """The words a table's name lacks must all stand in one row."""
    name = _name(table)
    missing = [word for word in words if word not in name]
    wanted = missing or words
    rows = [one.row for one in _kept(table, settings) if all(word in one.text for word in wanted)]
    if missing and not rows:
        return None
    return FoundTable(table, tuple(rows[:MOST_ROWS]), max(0, len(rows) - MOST_ROWS))


def _name(table: Table) -> str:
    return " ".join((table.word, table.title, table.answers, table.more)).casefold()


@lru_cache(maxsize=256)
def _kept(table: Table, settings: Settings) -> tuple[_Kept, ...]:
    return tuple(
        _row(row, sheet.columns) for sheet in printed(table, settings).sheets for row in sheet.rows
    )


def _row(row: ShownRow, columns: tuple[str, ...]) -> _Kept:
    told = (f"{word} {cell}" for word, cell in zip(columns, row.cells, strict=True) if cell != "–")
    found = FoundRow(row.id, row.word, "; ".join(told), row.standing, row.source)
    parts = (row.word, found.cells, row.standing, row.source)
    return _Kept(" ".join(parts).casefold(), found)
