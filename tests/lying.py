"""The program with a lie in it: it says "saved" a moment before it saves (for tests/kill.py)."""

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from threading import Timer

from sqlmodel import Session

from app import cli, serve
from app.store.engine import Store, open_store

LATER_S = 0.03


class LyingStore(Store):
    @contextmanager
    def writing(self) -> Iterator[Session]:
        change = super().writing()
        yield change.__enter__()
        Timer(LATER_S, change.__exit__, (None, None, None)).start()


def open_lying_store(folder: Path) -> Store:
    open_store(folder).close()
    return LyingStore(folder)


if __name__ == "__main__":
    serve.open_store = open_lying_store
    sys.exit(cli.main())
