"""The open database of one folder, and its sessions: one that reads, one that writes."""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from sqlalchemy import Connection, Engine, create_engine, event
from sqlmodel import Session

from app.store.errors import plain_words
from app.store.migrate import bring_up_to_date
from app.store.places import database_file, make_folder
from app.store.version import raise_version

WAIT_S = 5
"""How long a change waits for another one to finish."""

READERS = 40
"""As many as the server answers requests at once."""


class Store:
    """The maker's data in `folder`; close it when done."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        file = database_file(folder)
        self._reader = open_engine(file, "BEGIN", READERS, query_only=True)
        self._writer = open_engine(file, "BEGIN IMMEDIATE", connections=1)

    @contextmanager
    def reading(self) -> Iterator[Session]:
        """A session on one unchanging state of the data, which cannot write."""
        with plain_words(), Session(self._reader) as session:
            yield session

    @contextmanager
    def writing(self) -> Iterator[Session]:
        """A session with the one right to write: saved as a whole on leaving, or not at all.

        After an error, or a rollback inside, nothing is saved.
        """
        with plain_words(), Session(self._writer) as session:
            session.connection()  # takes the right to write now, not at the first change
            yield session
            if session.in_transaction():
                raise_version(session)
                session.commit()

    def close(self) -> None:
        """Lets go of the file."""
        self._reader.dispose()
        self._writer.dispose()


def open_store(folder: Path) -> Store:
    """The store of a folder, made when new, brought up to date when old (after a backup).

    StoreError where the folder cannot be used or the data is damaged or newer than the program.
    """
    make_folder(folder)
    bring_up_to_date(folder)
    return Store(folder)


def open_engine(file: Path, begin: str, connections: int, query_only: bool = False) -> Engine:
    """An engine of so many safe connections, whose transactions start with `begin`."""
    engine = create_engine(
        f"sqlite:///{file}",
        pool_size=connections,
        max_overflow=0,
        pool_timeout=WAIT_S,
        connect_args={"isolation_level": None, "timeout": WAIT_S},
    )

    @event.listens_for(engine, "connect")
    def set_up(connection: sqlite3.Connection, _record: object) -> None:
        connection.execute("PRAGMA journal_mode = WAL")
        connection.execute("PRAGMA synchronous = FULL")
        connection.execute("PRAGMA foreign_keys = ON")
        connection.execute(f"PRAGMA query_only = {'ON' if query_only else 'OFF'}")

    @event.listens_for(engine, "begin")
    def send_begin(connection: Connection) -> None:
        connection.exec_driver_sql(begin)

    return engine
