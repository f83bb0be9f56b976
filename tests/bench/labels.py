"""Two hundred labels with their codes, from the request to the whole page."""

from collections.abc import Iterator
from gzip import decompress
from pathlib import Path

from tests.bench.client import Client, served
from tests.bench.row import Row, interleaved
from tests.bench.shelf import guild_book, store_of

LABELS = 200


def rows(folder: Path, rounds: int) -> Iterator[Row]:
    """A page of labels in at most a second."""
    store_of(folder, guild_book(LABELS, 0)).close()
    with served(folder) as port:
        client = Client(port)
        (ms,) = interleaved(rounds, 1, lambda: client.get("/labels"))
        drawn = decompress(client.get("/labels")).count(b'<article class="label">')
    yield Row(f"{drawn} labels with codes", ms, "ms", 1000)
