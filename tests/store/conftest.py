"""An open store on an empty folder."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from app.store.engine import Store, open_store


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    opened = open_store(tmp_path / "data")
    yield opened
    opened.close()
