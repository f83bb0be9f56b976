"""What can go wrong with the maker's data; every message is a sentence she can be shown.

StoreError
├── Refused         the change does not fit the records that are there
├── Busy            another change is being saved, or another copy has the folder
├── NotSaved        the disk is full, or the folder cannot be written
├── Damaged         the file is not a whole database of this program
└── Newer           the data was written by a newer version of the program
"""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager

from sqlalchemy.exc import DBAPIError, TimeoutError


class StoreError(Exception):
    """Anything wrong with the maker's data; nothing of the change that met it was kept."""


class Refused(StoreError):
    """You meet it when a change breaks a link or takes a label that is in use."""


class Busy(StoreError):
    """You meet it when another change holds the right to write for too long."""


class NotSaved(StoreError):
    """You meet it when the disk is full or the folder cannot be written."""


class Damaged(StoreError):
    """You meet it when a file is no database of this program, or a broken one."""


class Newer(StoreError):
    """You meet it when the data was written by a newer version of the program."""


BUSY = "Something else is being saved. Nothing was changed; try again in a moment."
FULL = "The disk is full. Nothing was changed; make room and try again."
UNWRITABLE = "The data folder cannot be written, or has no room. Nothing was changed."
BROKEN = "The data file is damaged. Bring back a backup with: tallyhank restore FILE"

_CAUSES: dict[int, tuple[type[StoreError], str]] = {
    sqlite3.SQLITE_BUSY: (Busy, BUSY),
    sqlite3.SQLITE_LOCKED: (Busy, BUSY),
    sqlite3.SQLITE_FULL: (NotSaved, FULL),
    sqlite3.SQLITE_READONLY: (NotSaved, UNWRITABLE),
    sqlite3.SQLITE_CANTOPEN: (NotSaved, UNWRITABLE),
    sqlite3.SQLITE_IOERR: (NotSaved, UNWRITABLE),
    sqlite3.SQLITE_PERM: (NotSaved, UNWRITABLE),
    sqlite3.SQLITE_CORRUPT: (Damaged, BROKEN),
    sqlite3.SQLITE_NOTADB: (Damaged, BROKEN),
}


@contextmanager
def plain_words() -> Iterator[None]:
    """Turns an error of the database inside into the StoreError that says what to do."""
    try:
        yield
    except TimeoutError as error:
        raise Busy(BUSY) from error
    except (DBAPIError, sqlite3.Error) as error:
        raise _said(error) from error


def _said(error: DBAPIError | sqlite3.Error) -> Exception:
    cause = error.orig if isinstance(error, DBAPIError) else error
    if isinstance(cause, sqlite3.IntegrityError):
        return Refused(_refusal(str(cause)))
    kind, message = _CAUSES.get(getattr(cause, "sqlite_errorcode", 0) & 0xFF, (None, ""))
    return kind(message) if kind else error


def _refusal(text: str) -> str:
    if "holding.code" in text:
        return "Another skein or fleece has this label already. Choose another."
    if "FOREIGN KEY" in text:
        return "Other records still point to this one, or it points to one that is gone."
    return f"The records do not allow this: {text}."
