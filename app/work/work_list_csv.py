"""The work list as a table for a spreadsheet."""

import csv
import io
from collections.abc import Iterable

from app.book.table_cells import MARK, harmless
from app.planning.answers import WorkLine

COLUMNS = (
    ("kind", "spin, wash, card, buy or other"),
    ("what", "the line in words"),
    ("yarn", "the yarn to make or buy"),
    ("m", "metres of finished yarn, rounded up"),
    ("g", "grams of finished yarn, rounded up"),
    ("balls", "whole balls to buy"),
    ("prepared_g", "grams of carded or combed fibre to start from"),
    ("raw_g", "grams of raw fleece to start from"),
    ("fleece", "the fleece it comes from"),
    ("plan", "the garment it is for"),
    ("parts", "the parts it is for, with semicolons between"),
    ("done", "yes where it has been ticked off"),
)
"""Column names and what stands in them."""


def work_list_csv(lines: Iterable[WorkLine]) -> str:
    """The lines as CSV; a cell a spreadsheet would run as a formula begins with an apostrophe."""
    page = io.StringIO()
    page.write(MARK)
    table = csv.writer(page, lineterminator="\r\n")
    table.writerow(name for name, _ in COLUMNS)
    table.writerows([harmless(cell) for cell in _cells(line)] for line in lines)
    return page.getvalue()


def _cells(line: WorkLine) -> tuple[object, ...]:
    return (
        line.kind,
        line.text,
        line.yarn,
        line.m,
        line.g,
        line.balls,
        line.prepared_g,
        line.raw_g,
        line.fleece,
        line.plan,
        "; ".join(line.parts),
        "yes" if line.done else "",
    )
