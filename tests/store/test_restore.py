"""Restoring gives the backup whole, or leaves what was there whole."""

import sqlite3
from pathlib import Path

import pytest

from app.store import restore as room
from app.store.backup import backup
from app.store.engine import Store
from app.store.errors import Busy, Damaged, Newer, NotSaved, StoreError
from app.store.examine import examine
from app.store.places import backups_folder, database_file
from app.store.records import load_book, put
from app.store.restore import restore
from tests.books import a_book, a_fleece
from tests.store.every_kind import EVERY_KIND, is_whole, make_data
from tests.store.faults import no_file_longer_than, torn

NEWER = "UPDATE alembic_version SET version_num = '9999'"
LATER = a_book(a_fleece("Sorrel"))


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return make_data(tmp_path / "data", LATER)


@pytest.fixture
def earlier(tmp_path: Path) -> Path:
    return backup(make_data(tmp_path / "earlier"))


def test_the_backup_takes_the_place_and_the_former_data_is_kept(
    folder: Path, earlier: Path, tmp_path: Path
) -> None:
    kept = restore(earlier, folder)
    assert is_whole(folder, EVERY_KIND)
    assert kept is not None
    restore(kept, tmp_path / "again")
    assert is_whole(tmp_path / "again", LATER)
    assert not (folder / "restoring.part").exists()


def test_nothing_of_the_former_log_reaches_the_restored_data(folder: Path, earlier: Path) -> None:
    store = Store(folder)
    with store.writing() as session:
        put(session, a_fleece("Teasel"))
    log = database_file(folder).with_suffix(".sqlite-wal")
    last_words = log.read_bytes()
    store.close()
    log.write_bytes(last_words)  # as after a kill: the log still lies beside the file
    restore(earlier, folder)
    assert is_whole(folder, EVERY_KIND)


def test_data_in_use_is_not_replaced(folder: Path, earlier: Path) -> None:
    store = Store(folder)
    with store.reading() as session:
        load_book(session)
        with pytest.raises(Busy):
            restore(earlier, folder)
    store.close()
    assert is_whole(folder, LATER)


def test_damaged_data_gives_way_and_is_kept(folder: Path, earlier: Path) -> None:
    file = database_file(folder)
    harm = torn(file.read_bytes())
    file.write_bytes(harm)
    file.with_suffix(".sqlite-wal").write_bytes(b"a torn log")
    kept = restore(earlier, folder)
    assert is_whole(folder, EVERY_KIND)
    assert kept is not None
    assert kept.name.startswith("former-")
    assert kept.read_bytes() == harm
    assert kept.with_suffix(".sqlite-wal").read_bytes() == b"a torn log"


def test_a_file_that_is_not_there_is_said(folder: Path) -> None:
    with pytest.raises(StoreError, match="There is no file"):
        restore(folder / "nowhere.sqlite", folder)


@pytest.mark.parametrize("content", [b"", b"a shopping list " * 500])
def test_a_file_of_something_else_is_refused(folder: Path, tmp_path: Path, content: bytes) -> None:
    file = tmp_path / "list.sqlite"
    file.write_bytes(content)
    with pytest.raises(Damaged, match="not a whole data file"):
        restore(file, folder)
    assert is_whole(folder, LATER)


def test_a_torn_backup_is_refused(folder: Path, earlier: Path) -> None:
    earlier.write_bytes(torn(earlier.read_bytes()))
    with pytest.raises(Damaged):
        restore(earlier, folder)
    assert is_whole(folder, LATER)


def test_every_cut_of_a_backup_is_refused(folder: Path, earlier: Path) -> None:
    content = earlier.read_bytes()
    for length in range(1, len(content), len(content) // 15):
        earlier.write_bytes(content[:length])
        with pytest.raises(Damaged):
            restore(earlier, folder)
    assert is_whole(folder, LATER)


def test_a_backup_with_broken_links_is_refused(folder: Path, earlier: Path) -> None:
    _change(earlier, "DELETE FROM fleece")
    with pytest.raises(Damaged, match="point to others"):
        restore(earlier, folder)
    assert is_whole(folder, LATER)


def test_a_backup_of_a_newer_program_is_refused(folder: Path, earlier: Path) -> None:
    _change(earlier, NEWER)
    with pytest.raises(Newer):
        restore(earlier, folder)
    assert is_whole(folder, LATER)


def test_data_of_a_newer_program_gives_way_and_is_kept(folder: Path, earlier: Path) -> None:
    _change(database_file(folder), NEWER)
    kept = restore(earlier, folder)
    assert is_whole(folder, EVERY_KIND)
    assert kept is not None
    with pytest.raises(Newer):
        examine(kept)


def test_a_disk_without_room_leaves_the_data_as_it_was(folder: Path, earlier: Path) -> None:
    size = earlier.stat().st_size
    for limit in range(0, size, size // 12):
        with pytest.raises(NotSaved), no_file_longer_than(limit):
            restore(earlier, folder)
        assert is_whole(folder, LATER)
    assert not (folder / "restoring.part").exists()


@pytest.mark.parametrize(
    "step", ["copy", "upgrade", "backup", "_write_all_into", "move_into_place"]
)
@pytest.mark.parametrize(
    "fault", [OSError(28, "No space left on device"), sqlite3.OperationalError("pulled")]
)
def test_any_step_may_fail(
    folder: Path, earlier: Path, monkeypatch: pytest.MonkeyPatch, step: str, fault: Exception
) -> None:
    def fail(*_arguments: object) -> None:
        raise fault

    monkeypatch.setattr(room, step, fail)
    with pytest.raises((StoreError, sqlite3.OperationalError)):
        restore(earlier, folder)
    assert is_whole(folder, LATER)
    assert not (folder / "restoring.part").exists()


def test_damaged_data_stays_when_it_cannot_be_kept(
    folder: Path, earlier: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    file = database_file(folder)
    harm = torn(file.read_bytes())
    file.write_bytes(harm)

    def fail(*_arguments: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("shutil.copyfile", fail)
    with pytest.raises(NotSaved, match="No space left"):
        restore(earlier, folder)
    assert file.read_bytes() == harm
    assert list(backups_folder(folder).iterdir()) == []


def _change(file: Path, statement: str) -> None:
    connection = sqlite3.connect(file)
    connection.execute(statement)
    connection.commit()
    connection.close()
