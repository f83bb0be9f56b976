"""A store of its own for each test, and a session that may write in it."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from sqlmodel import Session

from app.store.engine import Store, open_store
from app.store.fill import fill
from tests.work.shelf import a_shelf


@pytest.fixture
def shelf(tmp_path: Path) -> Iterator[Store]:
    """A store that holds the shelf of shelf.py."""
    store = open_store(tmp_path / "shelf")
    with store.writing() as session:
        fill(session, a_shelf())
    yield store
    store.close()


@pytest.fixture
def writing(shelf: Store) -> Iterator[Session]:
    with shelf.writing() as session:
        yield session
