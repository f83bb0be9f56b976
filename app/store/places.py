"""Where the parts of the maker's data lie in her folder, and how they get onto the disk."""

import os
from pathlib import Path

from app.store.errors import NotSaved


def database_file(folder: Path) -> Path:
    return folder / "tallyhank.sqlite"


def backups_folder(folder: Path) -> Path:
    return folder / "backups"


def remove_database(folder: Path) -> None:
    """Take away the database of a folder and all that belongs to it; backups stay."""
    for ending in ("", "-wal", "-shm"):
        database_file(folder).with_suffix(f".sqlite{ending}").unlink(missing_ok=True)


def make_folder(folder: Path) -> None:
    """Make the folder if it is not there; NotSaved where it cannot be made or written."""
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise NotSaved(f"The folder {folder} cannot be made: {error.strerror}.") from error
    if not os.access(folder, os.W_OK):
        raise NotSaved(f"The folder {folder} cannot be written. Choose another with --data FOLDER.")


def move_into_place(prepared: Path, place: Path) -> None:
    """Let a finished file take its name, so that after a power cut it is there whole or not yet."""
    with prepared.open("rb+") as file:
        os.fsync(file.fileno())
    prepared.replace(place)
    if os.name == "posix":
        folder = os.open(place.parent, os.O_RDONLY)
        os.fsync(folder)
        os.close(folder)
