"""A program on an empty book, and a browser's stand-in that keeps its cookies."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from app.store.engine import Store, open_store
from app.web.server import create_app

HOME = "http://127.0.0.1:8765"


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    opened = open_store(tmp_path / "data")
    yield opened
    opened.close()


@pytest.fixture
def client(store: Store) -> Iterator[TestClient]:
    with TestClient(create_app(store), base_url=HOME, headers={"origin": HOME}) as browser:
        yield browser
