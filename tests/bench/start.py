"""From the command to the first page, against a process that only imports the frameworks."""

import os
import re
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from statistics import median
from time import perf_counter

from tests.bench.client import ROOT
from tests.bench.row import Row, timed
from tests.bench.shelf import guild_book, store_of
from tests.running import running

FRAMEWORKS = "import fastapi, uvicorn, jinja2"
BESIDE = "usual size of a maker's book: 60 skeins, 8 plans"


def rows(folder: Path, rounds: int) -> Iterator[Row]:
    """Time and memory of the start on a current database."""
    # An installed program is compiled once; one that may not keep that pays for it at each start.
    os.environ.pop("PYTHONDONTWRITEBYTECODE", None)
    store_of(folder, guild_book(60, 7)).close()
    floors, times, sizes = [], [], []
    for _ in range(rounds + 1):
        floors.append(timed(lambda: _run(FRAMEWORKS)))
        ms, mb = _to_first_page(folder)
        times.append(ms)
        sizes.append(mb)
    floor, start = median(floors[1:]), median(times[1:])
    yield Row("start to first page", start, "ms", 1.8, floor, BESIDE)
    yield Row("start to first page, in all", start / 1000, "s", 1.0)
    yield Row("memory after the first page", median(sizes), "MB", 90)


def _run(code: str) -> None:
    subprocess.run([sys.executable, "-c", code], cwd=ROOT, check=True)


def _to_first_page(folder: Path) -> tuple[float, float]:
    begun = perf_counter()
    with running("--data", folder) as program:
        program.page()
        ms = (perf_counter() - begun) * 1000
        status = Path(f"/proc/{program.process.pid}/status")
        found = re.search(r"VmRSS:\s+(\d+) kB", status.read_text()) if status.exists() else None
    return ms, int(found[1]) / 1024 if found else float("nan")
