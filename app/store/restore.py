"""Putting a backup in the place of the data: the new whole, or the old whole, never in between."""

import shutil
import sqlite3
from contextlib import closing
from pathlib import Path

from app.store.backup import backup, copy, new_name
from app.store.errors import Damaged, Newer, NotSaved, plain_words
from app.store.examine import examine
from app.store.migrate import upgrade
from app.store.photos import copy_pictures, names_in, names_there, photos_folder
from app.store.places import backups_folder, database_file, make_folder, move_into_place


def restore(file: Path, folder: Path) -> Path | None:
    """Verify a backup, keep what is in the folder, and put the backup in its place.

    The pictures of its photos are looked for beside it and in the folder; those that are in neither
    are for `check` to name. Answers where the former data is kept, None if there was none.
    StoreError where the backup is not sound, the data is in use or the disk is full; then the
    folder's data is as it was.
    """
    examine(file)
    make_folder(folder)
    prepared = folder / "restoring.part"
    try:
        with plain_words():
            _prepare(file, prepared)
            kept = _keep_former(folder)
            copy_pictures(names_in(prepared), photos_folder(file.parent), photos_folder(folder))
            move_into_place(prepared, database_file(folder))
    except OSError as error:
        raise NotSaved(f"The backup could not be restored: {error.strerror}.") from error
    finally:
        prepared.unlink(missing_ok=True)
    return kept


def _prepare(file: Path, prepared: Path) -> None:
    copy(file, prepared)
    upgrade(prepared)
    examine(prepared)


def _keep_former(folder: Path) -> Path | None:
    file = database_file(folder)
    if not file.exists():
        return None
    try:
        kept = backup(folder)
        _write_all_into(file)
    except (Damaged, Newer):
        kept = _keep_unread(folder)
    return kept


def _write_all_into(file: Path) -> None:
    """Leave nothing of the data in a write-ahead log, which would outlive the file it belongs to.

    That takes the whole file for oneself, so it also tells whether somebody has it open.
    """
    with closing(sqlite3.connect(file, timeout=1)) as connection:
        connection.execute("PRAGMA journal_mode = DELETE")


def _keep_unread(folder: Path) -> Path:
    """Keep data this program cannot read as it is, byte for byte."""
    file = database_file(folder)
    backups = backups_folder(folder)
    make_folder(backups)
    copy_pictures(names_there(folder), photos_folder(folder), photos_folder(backups))
    kept = new_name(folder, "former")
    shutil.copyfile(file, kept)
    for ending in ("-wal", "-shm"):
        beside = file.with_name(file.name + ending)
        if beside.exists():
            beside.replace(kept.with_name(kept.name + ending))
    return kept
