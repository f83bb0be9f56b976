"""The data of every released version opens, migrated, and holds what it held."""

import shutil
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from app import paths
from app.book.exchange import dumps, loads
from app.store.balance import wrong_balances
from app.store.engine import open_store
from app.store.examine import HEAD, revision
from app.store.places import database_file
from app.store.restore import restore
from tests.store.every_kind import book_in

HERE = Path(__file__).parent
KEPT = sorted(HERE.glob("*.sqlite"))
LARGEST = 100_000
"""Bytes of a kept database: it is there to be read by a test, not to be large."""


def test_every_version_is_kept() -> None:
    revisions = {file.name[:4] for file in paths.MIGRATIONS.glob("versions/*.py")}
    assert {file.stem for file in KEPT} == revisions
    assert all(file.stat().st_size <= LARGEST for file in KEPT)


@pytest.mark.parametrize("file", KEPT, ids=lambda file: file.stem)
def test_it_opens_migrated_and_equal(file: Path, tmp_path: Path) -> None:
    shutil.copy(file, database_file(tmp_path))
    expected = loads(file.with_suffix(".json").read_bytes())
    assert dumps(book_in(tmp_path)) == dumps(expected)
    assert revision(database_file(tmp_path)) == HEAD
    backed_up = list(tmp_path.glob("backups/*"))
    assert len(backed_up) == (0 if file.stem == HEAD else 1)


@pytest.mark.parametrize("file", KEPT, ids=lambda file: file.stem)
def test_every_amount_is_kept_to_the_milligram(file: Path, tmp_path: Path) -> None:
    """The lines as the old file has them, added up without the program."""
    with closing(sqlite3.connect(f"{file.as_uri()}?mode=ro", uri=True)) as old:
        summed = old.execute("SELECT holding_id, sum(mg), sum(mm) FROM line GROUP BY holding_id")
        amounts = {id: (mg, mm) for id, mg, mm in summed}
    shutil.copy(file, database_file(tmp_path))
    book = book_in(tmp_path)
    assert amounts
    assert {id: (one.mg, one.mm) for id, one in book.balances.items()} == amounts
    store = open_store(tmp_path)
    with store.reading() as session:
        assert wrong_balances(session) == []
    store.close()


@pytest.mark.parametrize("file", KEPT, ids=lambda file: file.stem)
def test_it_can_be_restored(file: Path, tmp_path: Path) -> None:
    restore(file, tmp_path / "data")
    expected = loads(file.with_suffix(".json").read_bytes())
    assert dumps(book_in(tmp_path / "data")) == dumps(expected)
