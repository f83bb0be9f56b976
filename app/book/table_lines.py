"""A table as text, taken apart into its lines and cells; a bad line never hides the next."""

import csv
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

SEPARATORS = {",": "commas", ";": "semicolons", "\t": "tabs"}
"""What may stand between cells, and what it is called."""


@dataclass(frozen=True, slots=True)
class TableLine:
    """The cells of a row and the number of the line it begins in, from 1; `cells` is None where
    its quotation marks do not match."""

    number: int
    cells: tuple[str, ...] | None


def table_lines(text: str, separator: str) -> Iterator[TableLine]:
    """The rows of a table (RFC 4180), those without any text left out.

    After a quotation mark that is never closed, no cell goes on over the end of its line.
    """
    lines = text.split("\n")
    at, reach = 0, len(lines)
    while at < len(lines):
        if not lines[at].strip():
            at += 1
            continue
        cells, used = _row(lines[at : at + 1] if reach == 1 else _from(lines, at), separator)
        if cells is None or any(cell.strip() for cell in cells):
            yield TableLine(at + 1, cells)
        if cells is None and at + used >= len(lines):
            reach = 1
        at += used if cells is not None else 1


def _from(lines: Sequence[str], first: int) -> Iterator[str]:
    return (lines[at] for at in range(first, len(lines)))


def _row(
    lines: Sequence[str] | Iterator[str], separator: str
) -> tuple[tuple[str, ...] | None, int]:
    """The cells of the row that begins `lines`, or None, and how many lines were read."""
    ended = (f"{line}\n" for line in lines)
    reader = csv.reader(ended, delimiter=separator, strict=True, skipinitialspace=True)
    try:
        return tuple(next(reader)), reader.line_num
    except csv.Error:
        return None, reader.line_num
