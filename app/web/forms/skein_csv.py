"""A table of skeins as it is typed or chosen: what its cells mean, row by row, in the words and
by the rules of the form of one skein."""

import re
from collections.abc import Container, Mapping
from dataclasses import dataclass, replace
from datetime import date

from app.book.book import Book
from app.book.skein_csv import RowFault, SkeinRow, SkeinTable
from app.web.forms.skein import read_skein
from app.web.forms.skein_yarn import NEW
from app.web.forms.yarn import COLOUR, TWIST_OF
from app.web.shown import Shown
from app.work.skein_csv import ListedSkein
from app.work.skein_csv_check import Row, SaidOfYarn, code_faults, with_yarns

FIELDS = {
    "code": "code",
    "yarn": "yarn_name",
    "fibre": "fibre",
    "plies": "plies",
    "twist": "twist",
    "weight": "mass",
    "length": "length",
    "girth": "girth",
    "turns": "turns",
    "wraps": "wraps",
    "fleece": "fleece",
    "dye lot": "dye_lot",
    "price": "price",
    "colour": "colour",
    "colour name": "colour_name",
    "place": "place",
    "day": "day",
    "notes": "notes",
}
"""The field of the form of a skein that a column fills."""

BEFORE = {"length": "length_before", "turns": "turns_before"}
"""The fields of a yarn that was measured before finishing."""

COLUMN_OF = {field: column for names in (FIELDS, BEFORE) for column, field in names.items()}

YES, NO = frozenset({"yes", "y", "true", "1"}), frozenset({"no", "n", "false", "0"})
DAY_IN_FULL = re.compile(r"(\d{1,2})\.\s?(\d{1,2})\.\s?(\d{4})")


@dataclass(frozen=True, slots=True)
class ReadSkeins:
    """Every skein of a table, good or bad, and all that is to be put right, line by line;
    `elsewhere` names fleeces of other books, kept in the notes of the skeins."""

    listed: tuple[ListedSkein, ...]
    faults: tuple[RowFault, ...]
    elsewhere: tuple[str, ...] = ()


def read_skeins(table: SkeinTable, book: Book) -> ReadSkeins:
    """What the rows of a table mean; the skeins count only where nothing is at fault."""
    fleeces = {one.name.lower(): one.id for one in reversed(book.fleeces)}
    faults = list(table.faults)
    own_wool = {one.name.lower() for one in book.yarns if one.fleece_id}
    elsewhere: list[str] = []
    rows: list[Row] = []
    for row in map(_tidy, table.rows):
        fleece = row.cells.get("fleece", "")
        if _from_elsewhere(row.cells, fleeces, own_wool):
            elsewhere.append(fleece)
            row = _noted(row)
        one, said, found = _read_row(row, book, fleeces)
        rows.append((one, said))
        faults += (RowFault(row.line, column, text) for column, text in found.items())
    listed, at_odds = with_yarns(rows, book)
    faults += [*at_odds, *code_faults(listed, book)]
    in_turn = tuple(sorted(faults, key=lambda one: one.line))
    return ReadSkeins(tuple(listed), in_turn, tuple(dict.fromkeys(elsewhere)))


def _tidy(row: SkeinRow) -> SkeinRow:
    """A row without its empty cells."""
    cells = {column: cell.strip() for column, cell in row.cells.items() if cell.strip()}
    if "fleece" in cells:
        cells["fleece"] = " ".join(cells["fleece"].split())
    return SkeinRow(row.line, cells)


def _from_elsewhere(
    cells: Mapping[str, str], fleeces: Mapping[str, str], own_wool: Container[str]
) -> bool:
    """Whether a row names a fleece this book never had, and its yarn is not of a fleece here."""
    fleece, yarn = cells.get("fleece", "").lower(), cells.get("yarn", "").lower()
    return bool(fleece) and fleece not in fleeces and yarn not in own_wool


def _noted(row: SkeinRow) -> SkeinRow:
    """A row with the name of its fleece in the notes instead."""
    cells = dict(row.cells)
    said = f"from {cells.pop('fleece')}"
    cells["notes"] = "\n".join(filter(None, (cells.get("notes"), said)))
    return SkeinRow(row.line, cells)


def _read_row(
    row: SkeinRow, book: Book, fleeces: Mapping[str, str]
) -> tuple[ListedSkein, SaidOfYarn, dict[str, str]]:
    """A skein, what is said of its yarn, and what is to be done about which column."""
    cells = row.cells
    faults = _table_faults(cells, fleeces)
    fields = FIELDS | (BEFORE if cells.get("finished", "").lower() in NO else {})
    values = {fields[column]: cell for column, cell in cells.items() if column in fields}
    reader, new = read_skein(values | _as_chosen(cells, book, fleeces), book.settings, book)
    one = ListedSkein(
        row.line,
        replace(new, taken_now=False),
        dye_lot=reader.text("dye_lot", longest=40),
        price=reader.text("price", longest=40),
    )
    for field, text in reader.errors.items():
        faults.setdefault(COLUMN_OF[field], text)
    return one, _said_of_yarn(one, cells), faults


def _as_chosen(cells: Mapping[str, str], book: Book, fleeces: Mapping[str, str]) -> dict[str, str]:
    """The fields that a form chooses or fills in, from cells that say the same in words."""
    twist, colour = cells.get("twist", "").upper(), _colour(cells)
    girth = Shown(book.settings).field_length(book.settings.girth_mm)
    return {
        "yarn": NEW,
        "taken": "before",
        "sure": "1",
        "fleece": fleeces.get(cells.get("fleece", "").lower(), ""),
        "twist": twist if twist in TWIST_OF else "",
        "girth": cells.get("girth") or girth,
        "colour": colour,
        "colour_known": "1" if COLOUR.fullmatch(colour) else "",
        "day": _iso(cells.get("day", "")),
    }


def _table_faults(cells: Mapping[str, str], fleeces: Mapping[str, str]) -> dict[str, str]:
    """What is wrong with a cell where the form has something to choose from, by column."""
    faults = {}
    if "yarn" not in cells:
        faults["yarn"] = "Name the yarn of this skein."
    if cells.get("twist", "").upper() not in TWIST_OF:
        faults["twist"] = "Write S or Z, or leave it empty."
    if "colour" in cells and not COLOUR.fullmatch(_colour(cells)):
        faults["colour"] = "Write # and six signs, as in #8a7f72; a name goes under “colour name”."
    if "fleece" in cells and cells["fleece"].lower() not in fleeces:
        faults["fleece"] = (
            "Your book spins this yarn from another fleece. Name that one, or leave it empty."
        )
    if "girth" in cells and "turns" not in cells:
        faults["girth"] = "A girth goes with turns. Give the turns, or leave it empty."
    for column in ("finished", "bought"):
        if column in cells and cells[column].lower() not in YES | NO:
            faults[column] = "Write yes or no."
    return faults


def _said_of_yarn(one: ListedSkein, cells: Mapping[str, str]) -> SaidOfYarn:
    yarn, bought = one.new.yarn, cells.get("bought", "").lower()
    said = {"fibre": yarn.fibre, "plies": str(yarn.plies or ""), "twist": yarn.twist}
    kept = {column: value for column, value in said.items() if column in cells and value}
    if bought in YES | NO:
        kept["bought"] = "yes" if bought in YES else "no"
    return SaidOfYarn(yarn.name, kept)


def _colour(cells: Mapping[str, str]) -> str:
    return f"#{cells.get('colour', '').lower().removeprefix('#')}"


def _iso(cell: str) -> str:
    """A day written 1.3.2026, as a day and a month cannot be mistaken with full stops."""
    found = DAY_IN_FULL.fullmatch(cell)
    if not found:
        return cell
    day, month, year = (int(part) for part in found.groups())
    try:
        return date(year, month, day).isoformat()
    except ValueError:
        return cell
