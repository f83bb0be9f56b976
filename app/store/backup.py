"""Backups: verified copies of the database, taken while it is in use, and of the photos beside it.

The pictures of all backups lie together in one folder, each once, since a picture never changes.
"""

import sqlite3
from contextlib import closing
from datetime import datetime
from pathlib import Path

from app.store.errors import BROKEN, Damaged, NotSaved, StoreError, plain_words
from app.store.examine import connect_to_read, examine
from app.store.photos import copy_pictures, names_in, photos_folder
from app.store.places import backups_folder, database_file, make_folder, move_into_place


def backup(folder: Path) -> Path:
    """Copy the database of a folder as it is now, verify the copy, and answer its file.

    Its pictures are copied first, so that a backup which has its name has them too; one that is
    lost already is for `check` to name, and no reason to be without a backup of the rest.
    StoreError where that is not possible; then no copy is left behind.
    """
    kept = backups_folder(folder)
    make_folder(kept)
    target = new_name(folder, "tallyhank")
    part = target.with_suffix(".part")
    try:
        copy(database_file(folder), part)
        examine(part)
        copy_pictures(names_in(part), photos_folder(folder), photos_folder(kept))
        move_into_place(part, target)
    except Damaged as error:
        raise Damaged(BROKEN) from error
    except OSError as error:
        raise NotSaved(f"The backup could not be written: {error.strerror}.") from error
    finally:
        part.unlink(missing_ok=True)
    return target


def backups(folder: Path) -> list[Path]:
    """The backups of a folder, the latest first."""
    return sorted(backups_folder(folder).glob("tallyhank-*.sqlite"), reverse=True)


def copy(source: Path, target: Path) -> None:
    """Copy a database that may be in use into a new file that stands by itself."""
    if not source.is_file():
        raise StoreError(f"There is no file {source}.")
    target.unlink(missing_ok=True)
    with (
        plain_words(),
        closing(connect_to_read(source)) as original,
        closing(sqlite3.connect(target)) as duplicate,
    ):
        duplicate.execute("PRAGMA synchronous = OFF")  # it goes to the disk as a whole, later
        original.backup(duplicate, pages=-1)
        duplicate.execute("PRAGMA journal_mode = DELETE")


def new_name(folder: Path, stem: str) -> Path:
    """A name in the backups folder that tells the day and time and is not taken."""
    moment = f"{datetime.now():%Y-%m-%d-%H%M%S}"
    for number in range(1, 1000):
        name = f"{stem}-{moment}-{number}" if number > 1 else f"{stem}-{moment}"
        place = backups_folder(folder) / f"{name}.sqlite"
        if not place.exists():
            return place
    raise StoreError("A thousand backups were asked for in one second.")
