"""The slowest pages of a reader who asks at her own pace, whether or not the last one has come.

A page that is late makes those after it wait; each is timed from the moment it was wanted.
"""

from collections.abc import Iterator
from pathlib import Path
from statistics import quantiles
from time import perf_counter, sleep

from tests.bench.client import Client, served
from tests.bench.pages import SKEINS
from tests.bench.row import Row
from tests.bench.shelf import guild_book, store_of

PACE_S = 0.04
IN_A_ROUND = 40
FLOOR = "/floor"
TAIL_SLACK = 1.35
"""A tail strays more than a median: by as much when a program is measured against itself."""


def rows(folder: Path, rounds: int) -> Iterator[Row]:
    """The 95th in a hundred of the list page, against that of the floor page in the same minute."""
    store_of(folder, guild_book(10_000, 100, large=True)).close()
    with served(folder) as port:
        client = Client(port)
        for path in (FLOOR, SKEINS):
            client.get(path)
        floor, skeins = _paced(client, rounds * IN_A_ROUND)
    note = f"one page each {1000 * PACE_S:.0f} ms, {len(skeins)} of each"
    yield Row("list page, slowest of 20", _tail(skeins), "ms", 1.35, _tail(floor), note, TAIL_SLACK)


def _paced(client: Client, each: int) -> tuple[list[float], list[float]]:
    """Milliseconds of the two pages in turn, from when each was wanted."""
    found: dict[str, list[float]] = {FLOOR: [], SKEINS: []}
    begun = perf_counter()
    for at in range(2 * each):
        path = (FLOOR, SKEINS)[at % 2]
        wanted = begun + at * PACE_S
        sleep(max(0.0, wanted - perf_counter()))
        client.get(path)
        found[path].append((perf_counter() - wanted) * 1000)
    return found[FLOOR], found[SKEINS]


def _tail(times: list[float]) -> float:
    return quantiles(times, n=20)[-1]
