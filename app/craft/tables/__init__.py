"""The trade's printed tables, a CSV file each, every row with its source and standing."""

import csv
from functools import cache
from pathlib import Path

Row = dict[str, str]


@cache
def table(name: str) -> tuple[Row, ...]:
    """The rows of a table by its file name without ending; FileNotFoundError for no such table."""
    path = Path(__file__).with_name(f"{name}.csv")
    with path.open(encoding="utf-8", newline="") as file:
        return tuple(csv.DictReader(file))
