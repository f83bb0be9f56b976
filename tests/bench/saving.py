"""A saved change against a plain commit, and a backup while somebody is writing."""

import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from dataclasses import replace
from itertools import count
from pathlib import Path
from statistics import median
from threading import Event, Thread

from app.book.errand import Errand
from app.store import Store, open_store
from app.store.backup import backup
from app.store.places import database_file
from app.store.records import put
from tests.bench.row import Row, interleaved, timed
from tests.bench.shelf import guild_book, store_of

LARGE_MB = 50


def rows(folder: Path, rounds: int) -> Iterator[Row]:
    """A saved change, and a backup of 50 MB."""
    with closing(store_of(folder / "change", guild_book(60, 7))) as store:
        yield _change(store, folder / "raw.sqlite", rounds)
    _pad(folder / "large")
    with closing(open_store(folder / "large")) as store:
        yield _backup(store, rounds)


def _change(store: Store, raw_file: Path, rounds: int) -> Row:
    numbers = count()
    with closing(_raw(raw_file)) as raw:
        floor, change = interleaved(
            rounds, 40, lambda: _raw_commit(raw, next(numbers)), lambda: _save(store, next(numbers))
        )
    return Row("a saved change", change, "ms", 5, floor, "plain sqlite3, WAL, FULL")


def _raw(file: Path) -> sqlite3.Connection:
    connection = sqlite3.connect(file, isolation_level=None)
    connection.execute("PRAGMA journal_mode = WAL")
    connection.execute("PRAGMA synchronous = FULL")
    connection.execute("CREATE TABLE errand (id TEXT PRIMARY KEY, text TEXT)")
    return connection


def _raw_commit(connection: sqlite3.Connection, number: int) -> None:
    connection.execute("BEGIN IMMEDIATE")
    connection.execute("INSERT OR REPLACE INTO errand VALUES (?, ?)", ("soap", f"buy {number}"))
    connection.execute("COMMIT")


def _save(store: Store, number: int) -> None:
    with store.writing() as session:
        put(session, Errand("soap", f"buy {number}"))


def _pad(folder: Path) -> None:
    """A database of 50 MB: long notes."""
    book = guild_book(4_000, 20)
    longer = tuple(
        replace(one, notes=f"{one.id} " * 900) if one.kind == "skein" else one
        for one in book.holdings
    )
    store_of(folder, replace(book, holdings=longer)).close()
    with closing(sqlite3.connect(database_file(folder))) as connection:
        connection.execute("PRAGMA wal_checkpoint(TRUNCATE)")


def _backup(store: Store, rounds: int) -> Row:
    size = database_file(store.folder).stat().st_size / 1e6
    with _written_to(store):
        times = [timed(lambda: backup(store.folder).unlink()) for _ in range(rounds)]
    note = f"{size:.0f} MB, verified, while written to"
    return Row(f"backup of {LARGE_MB} MB", median(times) / 1000, "s", 0.5, note=note)


@contextmanager
def _written_to(store: Store) -> Iterator[None]:
    stop, numbers = Event(), count()

    def write() -> None:
        while not stop.wait(0.002):
            _save(store, next(numbers))

    writer = Thread(target=write)
    writer.start()
    try:
        yield
    finally:
        stop.set()
        writer.join()
