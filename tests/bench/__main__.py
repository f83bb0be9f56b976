"""The bars as a table: `python -m tests.bench [--quick] [--json]`.

Every figure is a median of interleaved rounds. It answers 0 even where a bar is not held: on a
shared machine this is to be read, not to be waited for.
"""

import argparse
import json
import sys
from collections.abc import Iterator
from dataclasses import asdict
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.bench import (
    assign,
    fade,
    figures,
    labels,
    odds,
    pages,
    picture,
    saving,
    start,
    tables,
    tail,
    wool,
)
from tests.bench.row import Row

ROUNDS = 9
QUICK = 5
TOPICS = {
    "figures": figures,
    "odds": odds,
    "pages": pages,
    "tail": tail,
    "labels": labels,
    "tables": tables,
    "picture": picture,
    "fade": fade,
    "assign": assign,
    "start": start,
    "saving": saving,
    "wool": wool,
}


def main() -> int:
    """Measure what was asked for and print it."""
    parser = argparse.ArgumentParser(prog="python -m tests.bench", description=__doc__)
    parser.add_argument("--quick", action="store_true", help=f"{QUICK} rounds instead of {ROUNDS}")
    parser.add_argument("--json", action="store_true", help="for other programs to read")
    parser.add_argument("topics", nargs="*", metavar="TOPIC", help=", ".join(TOPICS))
    asked = parser.parse_args()
    found = _rows(asked.topics or list(TOPICS), QUICK if asked.quick else ROUNDS)
    if asked.json:
        told = [asdict(row) | {"value": row.value, "held": row.held} for row in found]
        print(json.dumps(told, indent=1))
        return 0
    print(f"{'what':40}{'measured':>12}{'floor':>10}{'ratio':>8}{'bar':>8}  held  note")
    for row in found:
        print(_line(row), flush=True)
    return 0


def _rows(topics: list[str], rounds: int) -> Iterator[Row]:
    for topic in topics:
        with TemporaryDirectory() as folder:
            yield from TOPICS[topic].rows(Path(folder), rounds)


def _line(row: Row) -> str:
    floor = f"{row.floor:.2f}" if row.floor is not None else "–"
    ratio = f"{row.value:.2f}" if row.floor is not None else "–"
    measured = f"{row.measured:.2f} {row.unit}"
    held = "yes" if row.held else "NO"
    return f"{row.what:40}{measured:>12}{floor:>10}{ratio:>8}{row.bar:>8g}  {held:4}  {row.note}"


if __name__ == "__main__":
    sys.exit(main())
