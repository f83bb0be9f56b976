"""The rows of a printed table kept beside these tests: facts, each with its source."""

import csv
from pathlib import Path


def printed(name: str) -> list[dict[str, str]]:
    """The rows of tests/published/data by file name without ending."""
    path = Path(__file__).parent / "data" / f"{name}.csv"
    with path.open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))
