"""One running copy of the program for one folder."""

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import IO

from app.store.errors import Busy
from app.store.places import make_folder


@contextmanager
def alone(folder: Path) -> Iterator[None]:
    """Keeps the folder for this copy; Busy where another runs on it. The system lets go of it
    when the program ends, however it ends."""
    make_folder(folder)
    with (folder / "running.lock").open("a") as file:
        if not _taken(file):
            raise Busy(
                f"Tallyhank is already running on {folder}. "
                "Use its window in the browser, or stop it first with Ctrl-C."
            )
        yield


def _taken(file: IO[str]) -> bool:
    try:
        _lock(file.fileno())
    except OSError:
        return False
    return True


if sys.platform == "win32":
    import msvcrt

    def _lock(number: int) -> None:
        msvcrt.locking(number, msvcrt.LK_NBLCK, 1)
else:
    import fcntl

    def _lock(number: int) -> None:
        fcntl.flock(number, fcntl.LOCK_EX | fcntl.LOCK_NB)
