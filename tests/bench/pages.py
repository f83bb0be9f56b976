"""Pages of the running program against the floor page of the same server."""

import gc
import gzip
import re
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

from app.book.book import Book
from app.planning import reckon
from tests.bench.client import Client, all_at_once, served
from tests.bench.row import Row, interleaved
from tests.bench.shelf import LARGE, guild_book, store_of

SKEINS = "/skeins?state=free"
PLAN = f"/garments/{LARGE}"


def rows(folder: Path, rounds: int) -> Iterator[Row]:
    """List page, plan page and first visit, on 10,000 skeins and 100 plans."""
    store_of(folder, guild_book(10_000, 100, large=True)).close()
    with served(folder) as port:
        client = Client(port)
        yield from _one_at_a_time(client, rounds)
        yield _eight_at_once(port, rounds)
        yield _weight(Client(port))


def _one_at_a_time(client: Client, rounds: int) -> Iterator[Row]:
    small = guild_book(60, 0, large=True)
    floor, skeins, plan, reckoning = interleaved(
        rounds,
        30,
        lambda: client.get("/floor"),
        lambda: client.get(SKEINS),
        lambda: client.get(PLAN),
        lambda: reckon(small),
    )
    yield Row("list page, 60 of 10,000 skeins", skeins, "ms", 1.35, floor)
    yield Row("plan page, 12 parts of 60 skeins", plan, "ms", 30, floor)
    yield Row("its reckoning alone", reckoning, "ms", 15, floor)
    yield from _whole_shelf(floor, rounds)


def _whole_shelf(floor: float, rounds: int) -> Iterator[Row]:
    whole, less_wool, fewer_plans = (
        guild_book(skeins, plans) for skeins, plans in ((10_000, 100), (5_000, 100), (10_000, 50))
    )
    gc.freeze()  # so that collecting what one book leaves does not look through the others
    ms, less_ms, fewer_ms = interleaved(
        rounds,
        1,
        # A copy has none of the indexes that the first reckoning of a book leaves behind.
        lambda: reckon(_fresh(whole)),
        lambda: reckon(_fresh(less_wool)),
        lambda: reckon(_fresh(fewer_plans)),
    )
    yield Row("reckoning of 10,000 skeins, 100 plans", ms, "ms", 300, floor)
    yield Row("twice the skeins", ms, "ms", 2.0, less_ms, "linear is 2")
    yield Row("twice the plans", ms, "ms", 2.0, fewer_ms, "linear is 2")


def _fresh(book: Book) -> Book:
    return replace(book)


def _eight_at_once(port: int, rounds: int) -> Row:
    floor, skeins = interleaved(
        rounds,
        1,
        lambda: all_at_once(port, 8, 20, "/floor"),
        lambda: all_at_once(port, 8, 20, SKEINS),
    )
    return Row("the same list page, 8 at once", skeins / 160, "ms", 1.35, floor / 160)


def _weight(client: Client) -> Row:
    page = client.get("/skeins")
    linked = re.findall(rb'(?:href|src)="(/static/[^"]+)"', gzip.decompress(page))
    files = {one: client.get(one.decode()) for one in linked}
    over_the_wire = len(page) + sum(map(len, files.values()))
    note = f"the page itself {len(page) / 1000:.0f} kB"
    return Row("first visit of the list page", over_the_wire / 1000, "kB", 60, note=note)
