"""Looking at a database file before it is trusted."""

import sqlite3
from collections.abc import Callable, Iterable, Iterator
from contextlib import closing
from pathlib import Path
from typing import Any

from sqlmodel import Session

from app.store.errors import Busy, Damaged, Newer, StoreError, plain_words

Execute = Callable[[str], Iterable[Any]]

HEAD = "0004"
"""The revision this program works with: the last file in migrations/versions."""


def revision(file: Path) -> str | None:
    """The revision of a database file, None for one that is new and empty.

    Damaged where it is a database of something else, Newer where this program is too old for it.
    """
    with closing(sqlite3.connect(file)) as connection:
        return _revision(connection, file)


def examine(file: Path) -> str:
    """The revision of a sound database file with a book in it; StoreError for any other file.

    Links are not looked at, which takes as long again: the database itself keeps them, and a
    backup to be restored has them checked with its migration.
    """
    if not file.is_file():
        raise StoreError(f"There is no file {file}.")
    try:
        with plain_words(), closing(connect_to_read(file)) as connection:
            found = _revision(connection, file)
            troubles = list(_torn(connection.execute))
    except (Busy, Newer):
        raise
    except StoreError as error:
        raise Damaged(f"{file} is not a whole data file of Tallyhank.") from error
    if found is None or troubles:
        raise Damaged(f"{file} is not a whole data file of Tallyhank. {' '.join(troubles[:1])}")
    return found


def disorder(session: Session) -> list[str]:
    """What is wrong with the database file itself, in sentences."""
    execute = session.connection().exec_driver_sql
    return [*_torn(execute), *_unlinked(execute)]


def connect_to_read(file: Path) -> sqlite3.Connection:
    """A connection that cannot change the file, nor make it where it is not."""
    return sqlite3.connect(f"{file.resolve().as_uri()}?mode=ro", uri=True)


def _torn(execute: Execute) -> Iterator[str]:
    for (text,) in execute("PRAGMA integrity_check"):
        if text != "ok":
            yield f"The file is damaged: {text}."


def _unlinked(execute: Execute) -> Iterator[str]:
    for table, _row, target, _key in execute("PRAGMA foreign_key_check"):
        yield f"A record of {table} points to one of {target} that is gone."


def _revision(connection: sqlite3.Connection, file: Path) -> str | None:
    tables = {name for (name,) in connection.execute("SELECT name FROM sqlite_master")}
    if not tables:
        return None
    if not {"alembic_version", "holding", "event"} <= tables:
        raise Damaged(f"{file} is not a data file of Tallyhank.")
    row = connection.execute("SELECT version_num FROM alembic_version").fetchone()
    if row is None:
        raise Damaged(f"{file} does not say which version of Tallyhank wrote it.")
    found: str = row[0]
    if found > HEAD:
        raise Newer(
            f"{file} was written by a newer version of Tallyhank. Install that version to open it."
        )
    return found
