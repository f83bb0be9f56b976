"""A program on an empty book, and a browser's stand-in that keeps its cookies."""

from collections.abc import Iterator
from pathlib import Path
from shutil import copytree

import pytest
from starlette.testclient import TestClient

from app.store.engine import Store, open_store
from app.web.server import create_app

HOME = "http://127.0.0.1:8765"


@pytest.fixture(scope="session")
def empty_folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with an empty book, made once: migrating takes a while."""
    folder = tmp_path_factory.mktemp("empty") / "data"
    open_store(folder).close()
    return folder


@pytest.fixture
def store(tmp_path: Path, empty_folder: Path) -> Iterator[Store]:
    opened = open_store(copytree(empty_folder, tmp_path / "data"))
    yield opened
    opened.close()


@pytest.fixture
def client(store: Store) -> Iterator[TestClient]:
    with TestClient(create_app(store), base_url=HOME, headers={"origin": HOME}) as browser:
        yield browser
