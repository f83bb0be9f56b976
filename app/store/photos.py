"""The picture files of photos: each named by the SHA-256 of what is in it, and never changed.

A file is on the disk before a row names it, so that no row is without its file. A file that no row
names any more is swept away when the program starts (photo_sweep.py): until then a removed photo
can be put back.
"""

import os
import re
import sqlite3
from collections.abc import Iterable
from contextlib import closing
from hashlib import sha256
from pathlib import Path

from sqlmodel import Session

from app.store.errors import Damaged, NotSaved
from app.store.examine import connect_to_read
from app.store.places import make_folder, move_into_place

NAME = re.compile(r"[0-9a-f]{64}\.jpg")


def photos_folder(folder: Path) -> Path:
    """Where the pictures of a data folder, or of its folder of backups, lie."""
    return folder / "photos"


def folder_of(session: Session) -> Path:
    """The data folder of an open session."""
    return Path(session.connection().engine.url.database or "").parent


def file_name(digest: str) -> str:
    """The name of the picture with this SHA-256."""
    return f"{digest}.jpg"


def state_of(folder: Path, digest: str) -> str:
    """What is wrong with the picture of a data folder: "missing", "damaged", or an empty string."""
    name = file_name(digest)
    file = photos_folder(folder) / name
    if not NAME.fullmatch(name) or not file.is_file():
        return "missing"
    return "" if _is_whole(file) else "damaged"


def read_picture(folder: Path, digest: str) -> bytes:
    """The picture of a data folder; Damaged where it is not there as it was."""
    wrong = state_of(folder, digest)
    if wrong:
        raise Damaged(f"The picture {file_name(digest)} is {wrong}.")
    return (photos_folder(folder) / file_name(digest)).read_bytes()


def keep_picture(folder: Path, content: bytes) -> str:
    """Put a picture on the disk for good, before its row is written; answers its SHA-256.

    NotSaved where the disk has no room; then no part of it is left.
    """
    digest = sha256(content).hexdigest()
    try:
        _write(photos_folder(folder) / file_name(digest), content)
    except OSError as error:
        raise NotSaved(f"The photo could not be written: {error.strerror}.") from error
    return digest


def names_in(database: Path) -> list[str]:
    """The files that the rows of a database name; none for one made before there were photos."""
    with closing(connect_to_read(database)) as connection:
        try:
            found = connection.execute("SELECT DISTINCT sha256 FROM photo ORDER BY sha256")
            return [file_name(digest) for (digest,) in found]
        except sqlite3.OperationalError:
            return []


def copy_pictures(names: Iterable[str], source: Path, target: Path) -> list[str]:
    """Copy the pictures that one folder of photos lacks from another, each verified; answers the
    names of those that are whole in neither. OSError where the disk has no room."""
    lost = []
    for name in names:
        if not NAME.fullmatch(name):
            lost.append(name)
        elif not _is_whole(target / name):
            if _is_whole(source / name):
                _write(target / name, (source / name).read_bytes())
            else:
                lost.append(name)
    return lost


def names_there(folder: Path) -> list[str]:
    """The pictures of a data folder, whether a row names them or not."""
    place = photos_folder(folder)
    return sorted(one.name for one in place.glob("*.jpg") if NAME.fullmatch(one.name))


def _is_whole(file: Path) -> bool:
    if not file.is_file():
        return False
    return sha256(file.read_bytes()).hexdigest() == file.stem


def _write(place: Path, content: bytes) -> None:
    if _is_whole(place):
        return
    _make(place.parent)
    part = place.with_suffix(".part")
    try:
        part.write_bytes(content)
        move_into_place(part, place)
    finally:
        part.unlink(missing_ok=True)


def _make(folder: Path) -> None:
    """Make a folder of photos, itself on the disk before anything in it counts as kept."""
    if folder.is_dir():
        return
    make_folder(folder)
    if os.name == "posix":
        above = os.open(folder.parent, os.O_RDONLY)
        os.fsync(above)
        os.close(above)
