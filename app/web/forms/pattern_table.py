"""A pasted table of sizes: its first line names the sizes, each line after it one thing of them.

    size          S     M     L
    chest         96    104   112
    cast on body  212   229   246

What the cells mean is read by the form of a pattern, by the same rules.
"""

import re
from dataclasses import dataclass, field

from app.book.pattern import PatternSize, Share
from app.book.settings import Settings
from app.book.table_lines import TableLine, table_lines
from app.book.table_text import plain_lines
from app.web.forms.pattern_printed import in_cells
from app.web.forms.pattern_sizes import MOST_PARTS, MOST_SIZES, read_sizes
from app.web.forms.reader import Reader

LONGEST = 50_000
"""Signs of a table."""

WIDTHS = (
    *("chest", "bust", "width", "finished chest", "finished width", "head", "hand", "foot"),
    "width around",
)
PIECES = {
    "cast on": "cast_on",
    "pick up": "cast_on",
    "widest": "widest",
    "end": "widest",
    "rows": "rows",
    "rounds": "rows",
    "length": "length",
}
OF_PART = {"copies": "copies", "pieces": "copies", "place": "place", "share": "share"}
LINES = {
    "chest, width, head …": "finished, once around",
    "yarn": "stated for a size; also as “yards”, “metres” or “balls of 115 m”",
    "cast on body": "stitches a part begins with; name any part in the same way",
    "widest body": "stitches where it is widest, or where it ends if it narrows",
    "rows body": "rows or rounds",
    "length body": "by the tape; “length body (in)” for inches",
    "copies sleeve": "how many alike, in the first column",
    "place yoke": "where a part lies, in the first column, if its name does not tell",
    "share sleeve": "of the yarn, in percent, in the first column, if the pattern tells",
    "Sleeve × 2: cast on": "as the page of a pattern prints it, so that its table can be pasted",
}
"""The lines a table may have, for the page that explains it."""

UNIT = re.compile(r"\((cm|mm|in|inches|m|yd)\)\s*$", re.I)
BALLS = re.compile(r"balls? of (.+)", re.I)
YARN = {"yarn": "", "stated": "", "yarn stated": "", "metres": "m", "meters": "m", "yards": "yd"}
BLANK = frozenset({"", "-", "–", "—", "n/a"})
PRINTED = re.compile(
    r"(?P<part>.+?)(?:\s*×\s*(?P<copies>\d+))?\s*:\s*"
    r"(?P<words>cast on|pick up|widest|end|rows|rounds|length|copies|place|share)"
    r"(?:, or end| of the yarn)?",
    re.I,
)
"""A row as the page of a pattern prints it: "Sleeves × 2: widest, or end"."""


@dataclass(frozen=True, slots=True)
class LineFault:
    """What is to be put right in a line of a table, counted from 1; `what` is its first cell."""

    line: int
    what: str
    text: str


@dataclass(slots=True)
class SizeTable:
    """A table as it was understood: its sizes count only where nothing is at fault."""

    sizes: tuple[PatternSize, ...] = ()
    shares: tuple[Share, ...] = ()
    faults: list[LineFault] = field(default_factory=list)


@dataclass(slots=True)
class _Fields:
    """The fields of the form that a table fills, and the line each stands in."""

    columns: int
    values: dict[str, str] = field(default_factory=dict)
    line_of: dict[str, tuple[int, str]] = field(default_factory=dict)
    parts: dict[str, int] = field(default_factory=dict)
    faults: list[LineFault] = field(default_factory=list)

    def put(self, name: str, cell: str, line: int, what: str) -> None:
        if name in self.values:
            self.fault(line, what, "This stands in the table twice.")
        self.values[name] = cell
        self.line_of[name] = line, what

    def fault(self, line: int, what: str, text: str) -> None:
        one = LineFault(line, what, text)
        if one not in self.faults:
            self.faults.append(one)

    def part(self, name: str, line: int, what: str) -> int:
        """The number of a part; "sleeve" and "Sleeves" are one."""
        key = name.casefold().removesuffix("s")
        if key not in self.parts:
            self.parts[key] = len(self.parts) + 1
            self.put(f"part_{self.parts[key]}", name[:1].upper() + name[1:], line, what)
        return self.parts[key]

    def copies(self, name: str, count: str | None, line: int, what: str) -> None:
        """How many alike, as it stands beside a part's name in each of its rows."""
        field = f"copies_{self.part(name, line, what)}"
        if count and self.values.get(field) != count:
            self.put(field, count, line, what)


def read_table(text: str, settings: Settings) -> SizeTable:
    """The sizes in a pasted table, and what is to be put right, line by line."""
    lines = in_cells(plain_lines(text)[:LONGEST])
    rows = list(table_lines(lines, separator_of(lines)))
    if not rows or rows[0].cells is None:
        return SizeTable(faults=[LineFault(1, "", "Paste a table: its first line names sizes.")])
    names = [cell.strip() for cell in rows[0].cells[1:]]
    while names and not names[-1]:
        names.pop()
    if not 1 <= len(names) <= MOST_SIZES:
        found = f"The first line must name 1 to {MOST_SIZES} sizes; it names {len(names)}."
        return SizeTable(faults=[LineFault(rows[0].number, "", found)])
    fields = _Fields(len(names))
    for k, name in enumerate(names, 1):
        fields.put(f"size_{k}", name, rows[0].number, "sizes")
    for row in rows[1:]:
        _take(fields, row)
    return _as_sizes(fields, settings)


def separator_of(text: str) -> str:
    """What stands between the cells: tabs, else semicolons, else commas."""
    first = text.lstrip("\n").split("\n")[0]
    return next((one for one in "\t;" if one in first), ",")


def _as_sizes(fields: _Fields, settings: Settings) -> SizeTable:
    if len(fields.parts) > MOST_PARTS:
        fields.fault(1, "", f"A pattern has at most {MOST_PARTS} parts here.")
    counts = {"sizes": str(fields.columns), "parts": str(min(len(fields.parts), MOST_PARTS))}
    reader = Reader(fields.values | counts, settings)
    sizes, shares = read_sizes(reader)
    for name, message in reader.errors.items():
        line, what = fields.line_of.get(name, (1, ""))
        fields.fault(line, what, message)
    faults = sorted(fields.faults, key=lambda one: one.line)
    return SizeTable(sizes, shares, faults)


def _take(fields: _Fields, row: TableLine) -> None:
    """One line into the fields it fills."""
    if row.cells is None:
        fields.fault(row.number, "", "The quotation marks in this line do not match.")
        return
    what, *cells = (cell.strip() for cell in row.cells)
    if any(cells[fields.columns :]):
        fields.fault(row.number, what, f"There are only {fields.columns} sizes; this has more.")
    cells = [("" if cell.lower() in BLANK else cell) for cell in cells[: fields.columns]]
    unit = UNIT.search(what)
    name = " ".join(UNIT.sub("", what).split())
    if unit:
        cells = [_with_unit(cell, unit[1]) for cell in cells]
    printed = PRINTED.fullmatch(name)
    if printed:
        name = f"{printed['words']} {printed['part']}"
        fields.copies(printed["part"], printed["copies"], row.number, what)
    if not _take_size(fields, name, cells, row.number, what):
        _take_part(fields, name, cells, row.number, what)


def _take_size(fields: _Fields, name: str, cells: list[str], line: int, what: str) -> bool:
    """A line that is about the sizes; False for any other."""
    word, balls = name.lower(), BALLS.fullmatch(name)
    if word in WIDTHS:
        _put_all(fields, "width", cells, line, what)
    elif word in YARN:
        cells = [_with_unit(cell, YARN[word]) for cell in cells]
        _put_all(fields, "stated", cells, line, what)
    elif balls:
        cells = [f"{cell}×{balls[1]}" if cell else "" for cell in cells]
        _put_all(fields, "stated", cells, line, what)
    else:
        return False
    return True


def _take_part(fields: _Fields, name: str, cells: list[str], line: int, what: str) -> None:
    """A line that is about a part: what of it, and which."""
    for words, kind in (PIECES | OF_PART).items():
        if not name.lower().startswith(f"{words} "):
            continue
        p = fields.part(name[len(words) :].strip(), line, what)
        if words in OF_PART:
            first = next((cell.rstrip(" %\u202f\u00a0") for cell in cells if cell), "")
            fields.put(f"{kind}_{p}", first, line, what)
        else:
            _put_all(fields, f"{kind}_{p}", cells, line, what)
        return
    known = "chest, yarn, or cast on, widest, rows, length, copies, place or share with a part"
    fields.fault(line, what, f"What is this? A line begins with {known}.")


def _put_all(fields: _Fields, name: str, cells: list[str], line: int, what: str) -> None:
    for k, cell in enumerate(cells, 1):
        fields.put(f"{name}_{k}", cell, line, what)


def _with_unit(cell: str, unit: str) -> str:
    return f"{cell} {unit}" if cell and unit and cell[-1].isdigit() else cell
