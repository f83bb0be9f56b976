"""The wool book with 100,000 lines: what everything holds, by weight, and its entries, against the
floor page of the same server; and how long it takes to follow all of its wool."""

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

from app.book.book import Book
from app.book.event import Event, Line
from app.book.words import YARN_KINDS
from app.planning.trace import trace
from app.store import open_store
from app.store.fill import fill
from tests.bench.client import Client, served
from tests.bench.row import Row, interleaved
from tests.bench.shelf import DAY, guild_book

LINES = 100_000
PAGES = {
    "balances of yarn, by weight": "/wool-book/balances?of=yarn",
    "balances, the fifth page": "/wool-book/balances?of=yarn&page=5",
    "balances of the rest, by weight": "/wool-book/balances",
    "entries, the latest first": "/wool-book",
}


def rows(folder: Path, rounds: int) -> Iterator[Row]:
    """Each page within the bar for lists."""
    book = a_long_book()
    store = open_store(folder)
    with store.writing() as session:
        fill(session, book)
    store.close()
    with served(folder) as port:
        client = Client(port)
        floor, *pages = interleaved(
            rounds,
            20,
            lambda: client.get("/floor"),
            *(lambda address=address: client.get(address) for address in PAGES.values()),
        )
    lines = sum(len(event.lines) for event in book.events)
    for what, ms in zip(PAGES, pages, strict=True):
        yield Row(what, ms, "ms", 1.35, floor, f"{lines:,} lines in the book")
    (ms,) = interleaved(min(rounds, 3), 1, lambda: trace(book.events))
    yield Row("all wool followed", ms, "ms", 300, floor, "once for each change of the data")


def a_long_book(lines: int = LINES) -> Book:
    """10,000 skeins, weighed again and again until the book has so many lines."""
    book = guild_book(10_000, 0)
    skeins = [one.id for one in book.holdings if one.kind in YARN_KINDS]
    events = list(book.events)
    more = (lines - sum(len(event.lines) for event in events)) // 2
    for number in range(more):
        skein, gained = skeins[number % len(skeins)], 1000 * (-1) ** (number // len(skeins))
        moved = Line(skein, gained), Line("weighing and moisture", -gained)
        events.append(Event(len(events) + 1, "correct", DAY, moved, "weighed again"))
    return replace(book, events=tuple(events))
