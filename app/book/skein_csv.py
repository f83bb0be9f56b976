"""Skeins as a table: its columns, and how it is read and written. What its cells mean is read in
`app/web/forms/skein_csv.py`."""

import csv
import io
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from difflib import get_close_matches
from itertools import islice

from app.book.table_cells import MARK, harmless, told_back
from app.book.table_lines import SEPARATORS, TableLine, table_lines
from app.book.table_text import plain_lines

COLUMNS: dict[str, str] = {
    "code": "the label on it, unlike every other; left empty it gets the next number of its yarn",
    "yarn": "the name of its yarn, always needed; one your book does not know is added to it",
    "fibre": "of the yarn: wool, alpaca …; left empty it is that of the fleece, or wool",
    "plies": "singles plied together, a whole number",
    "twist": "direction of the last twist, S or Z",
    "weight": "dry, such as 96 g or 3 1/2 oz; always needed",
    "length": "such as 213 m or 233 yd; or else give turns",
    "girth": "once round the reel, such as 1.5 m; left empty it is that of your settings",
    "turns": "on the reel, instead of a length",
    "finished": "yes or no: measured after it was washed and dried; left empty it is yes",
    "wraps": "in one inch",
    "fleece": "the fleece it was spun from; one your book does not have is kept in the notes",
    "bought": "yes or no; left empty it is as your book knows the yarn, or no",
    "dye lot": "by the label",
    "price": "what was paid, in your own words",
    "colour": "as # and six signs, such as #8a7f72",
    "colour name": "the colour in words",
    "place": "where it lies",
    "day": "since when you have it, such as 2026-03-01; left empty it is today",
    "notes": "any text",
}
"""Column names and what stands in them."""

MOST_ROWS = 5000
MOST_BYTES = 2 << 20
"""Of a table's text in UTF-8."""


class NoTable(ValueError):
    """Met where a text is no table of skeins at all; the message says what to do."""


@dataclass(frozen=True, slots=True)
class SkeinRow:
    """What stands in the cells of a row, by column, and the number of its line."""

    line: int
    cells: Mapping[str, str]


@dataclass(frozen=True, slots=True)
class RowFault:
    """What is to be done about a cell; `column` is empty where the whole line is at fault."""

    line: int
    column: str
    text: str


@dataclass(frozen=True, slots=True)
class SkeinTable:
    """The rows that have the shape of the table, and a fault for each that has not."""

    separator: str
    rows: tuple[SkeinRow, ...]
    faults: tuple[RowFault, ...]


def read_skein_table(text: str) -> SkeinTable:
    """Take a table apart; its cells are still text. NoTable where there is none, or too much."""
    text = plain_lines(text)
    if len(text.encode()) > MOST_BYTES:
        raise NoTable("The table is larger than 2 MiB. Bring it in in parts.")
    separator = _separator(text)
    lines = table_lines(text, separator)
    header = _header(next(lines, None))
    found = list(islice(lines, MOST_ROWS + 1))
    if len(found) > MOST_ROWS:
        raise NoTable(f"The table has more than {MOST_ROWS} rows. Bring it in in parts.")
    if not found:
        raise NoTable("There is no skein under the names of the columns.")
    faults = [RowFault(line.number, "", fault) for line in found for fault in _shape(line, header)]
    bad = {fault.line for fault in faults}
    rows = [_row(line, header) for line in found if line.number not in bad]
    return SkeinTable(separator, tuple(rows), tuple(faults))


def write_skein_table(rows: Iterable[Mapping[str, str]]) -> str:
    """The table of some rows, their cells by column, as CSV with commas and a byte order mark."""
    page = io.StringIO()
    page.write(MARK)
    table = csv.writer(page, lineterminator="\r\n")
    table.writerow(COLUMNS)
    table.writerows([harmless(row.get(column, "")) for column in COLUMNS] for row in rows)
    return page.getvalue()


def _separator(text: str) -> str:
    """What parts the most column names of the first line; a comma where nothing does."""

    def known(separator: str) -> int:
        first = next(table_lines(text, separator), None)
        return len(set(_names(first.cells or ())) & set(COLUMNS)) if first else 0

    return max(SEPARATORS, key=known)


def _header(line: TableLine | None) -> tuple[str, ...]:
    """The columns in the order of the table, an empty name for one without."""
    if line is None:
        raise NoTable("There is nothing in it.")
    names = _names(line.cells or ())
    faults = list(_header_faults(names))
    if faults:
        raise NoTable(f"Line {line.number}: {' '.join(faults)}")
    return names


def _header_faults(names: Sequence[str]) -> Iterator[str]:
    given = [name for name in names if name]
    if not set(given) & set(COLUMNS) or len(given) > 3 * len(COLUMNS):
        yield "the first line must name the columns, such as yarn, weight, length."
        return
    for name in dict.fromkeys(given):
        if name not in COLUMNS:
            yield f"“{name[:40]}” is no column here{_meant(name)}: rename it or take it out."
        elif given.count(name) > 1:
            yield f"“{name}” is there more than once: keep one of them."
    for name in ("yarn", "weight"):
        if name not in given:
            yield f"the column “{name}” is missing."
    if not {"length", "turns"} & set(given):
        yield "a column “length” or “turns” is missing."


def _meant(name: str) -> str:
    near = get_close_matches(name[:40], COLUMNS, 1, 0.7)
    return f" (is it “{near[0]}”?)" if near else ""


def _names(cells: Iterable[str]) -> tuple[str, ...]:
    plain = (told_back(cell.strip()).replace("_", " ").lower() for cell in cells)
    return tuple(" ".join(name.split()) for name in plain)


def _shape(line: TableLine, header: Sequence[str]) -> Iterator[str]:
    """What is wrong with a row before its cells are read."""
    if line.cells is None:
        yield (
            "The quotation marks do not match: a cell that begins with one ends with one, and one "
            "inside it is typed twice."
        )
        return
    unnamed = (cell for at, cell in enumerate(line.cells) if not any(header[at : at + 1]))
    if any(cell.strip() for cell in unnamed):
        yield (
            "There is more in this line than there are columns: put a cell that holds the sign "
            "between cells in quotation marks."
        )


def _row(line: TableLine, header: Sequence[str]) -> SkeinRow:
    cells = zip(header, line.cells or (), strict=False)
    return SkeinRow(line.number, {column: told_back(cell) for column, cell in cells if column})
