"""Pages of the tables room against the floor page: a question, and the longest tables."""

from collections.abc import Iterator
from pathlib import Path

from tests.bench.client import Client, served
from tests.bench.row import Row, interleaved
from tests.bench.shelf import guild_book, store_of

PAGES = {
    "table, a question": "/tables/counts?count=222&system=m/100+g",
    "table of breeds": "/tables/breeds",
    "table of bodies": "/tables/bodies",
    "list of the tables": "/tables",
    "search of all tables": "/tables?q=wool",
}


def rows(folder: Path, rounds: int) -> Iterator[Row]:
    """Each page at most twice the floor."""
    store_of(folder, guild_book(60, 0)).close()
    with served(folder) as port:
        client = Client(port)
        floor, *pages = interleaved(
            rounds,
            20,
            lambda: client.get("/floor"),
            *(lambda address=address: client.get(address) for address in PAGES.values()),
        )
    for what, ms in zip(PAGES, pages, strict=True):
        yield Row(what, ms, "ms", 2.0, floor)
