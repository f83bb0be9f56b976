"""A backup is whole or is not there, and never disturbs the data."""

from datetime import date
from pathlib import Path

import pytest

from app.store import backup as room
from app.store.backup import backup, backups, copy
from app.store.engine import Store
from app.store.errors import Damaged, NotSaved, StoreError
from app.store.examine import HEAD, examine
from app.store.places import backups_folder, database_file
from app.store.records import put
from app.store.restore import restore
from tests.books import a_fleece
from tests.store.every_kind import EVERY_KIND, is_whole, make_data
from tests.store.faults import no_file_longer_than, torn


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return make_data(tmp_path / "data")


def test_a_backup_holds_everything_and_stands_by_itself(folder: Path, tmp_path: Path) -> None:
    file = backup(folder)
    assert file.name.startswith(f"tallyhank-{date.today():%Y-%m-%d}")
    assert [one.name for one in backups_folder(folder).iterdir()] == [file.name]
    other = tmp_path / "other"
    assert restore(file, other) is None
    assert is_whole(other)


def test_backups_of_one_second_have_names_of_their_own(folder: Path) -> None:
    made = [backup(folder) for _ in range(3)]
    assert len({*made}) == 3
    assert backups(folder) == sorted(made, reverse=True)


def test_a_backup_is_taken_while_a_change_is_under_way(folder: Path, tmp_path: Path) -> None:
    store = Store(folder)
    with store.writing() as session:
        put(session, a_fleece("not yet saved"))
        file = backup(folder)
    store.close()
    restore(file, tmp_path / "other")
    assert is_whole(tmp_path / "other")


def test_what_is_only_in_the_log_is_in_the_backup(folder: Path, tmp_path: Path) -> None:
    store = Store(folder)
    with store.writing() as session:
        put(session, a_fleece("Sorrel"))
    assert database_file(folder).with_suffix(".sqlite-wal").stat().st_size > 0
    restore(backup(folder), tmp_path / "other")
    store.close()
    assert not is_whole(tmp_path / "other", EVERY_KIND)


def test_no_data_no_backup(tmp_path: Path) -> None:
    with pytest.raises(StoreError, match="There is no file"):
        backup(tmp_path)


def test_damaged_data_is_not_backed_up_as_if_it_were_whole(folder: Path) -> None:
    file = database_file(folder)
    file.write_bytes(torn(file.read_bytes()))
    with pytest.raises(Damaged, match="damaged"):
        backup(folder)
    assert list(backups_folder(folder).iterdir()) == []


def test_a_disk_without_room_leaves_no_half_backup(folder: Path) -> None:
    size = database_file(folder).stat().st_size
    for limit in range(0, size, size // 12):
        with pytest.raises(NotSaved), no_file_longer_than(limit):
            backup(folder)
        assert list(backups_folder(folder).iterdir()) == []
    assert is_whole(folder)


@pytest.mark.parametrize("step", ["copy", "examine", "move_into_place"])
@pytest.mark.parametrize("fault", [OSError(28, "No space left on device"), Damaged("torn")])
def test_any_step_may_fail(
    folder: Path, monkeypatch: pytest.MonkeyPatch, step: str, fault: Exception
) -> None:
    def fail(*_arguments: object) -> None:
        raise fault

    monkeypatch.setattr(room, step, fail)
    with pytest.raises(StoreError):
        backup(folder)
    assert list(backups_folder(folder).iterdir()) == []
    assert is_whole(folder)


def test_a_copy_that_came_out_wrong_is_found(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def copy_badly(source: Path, target: Path) -> None:
        copy(source, target)
        target.write_bytes(torn(target.read_bytes()))

    monkeypatch.setattr(room, "copy", copy_badly)
    with pytest.raises(Damaged):
        backup(folder)
    assert list(backups_folder(folder).iterdir()) == []


def test_examining_changes_nothing(folder: Path) -> None:
    file = backup(folder)
    before = file.read_bytes()
    assert examine(file) == HEAD
    assert file.read_bytes() == before
    assert [one.name for one in backups_folder(folder).iterdir()] == [file.name]
