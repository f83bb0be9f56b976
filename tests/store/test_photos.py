"""Pictures beside the database: whole or not there, in every backup, swept when unused."""

import os
import subprocess
import sys
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from shutil import rmtree

import pytest

from app.book.book import Book
from app.book.photo import Photo
from app.store import photos as room
from app.store import restore as restoring
from app.store.backup import backup
from app.store.engine import Store, open_store
from app.store.errors import Damaged, NotSaved
from app.store.photo_sweep import sweep
from app.store.photos import (
    copy_pictures,
    file_name,
    folder_of,
    keep_picture,
    names_in,
    names_there,
    photos_folder,
    read_picture,
    state_of,
)
from app.store.places import backups_folder, database_file
from app.store.records import put, remove
from app.store.restore import restore
from tests.backups.make import HERE as OLDER
from tests.books import a_book, a_fleece, a_photo
from tests.pictures import a_picture
from tests.store.every_kind import book_in, make_data
from tests.store.faults import no_file_longer_than, torn

ROOT = Path(__file__).parents[2]
GREY = a_picture(300, 200)
RED = a_picture(colour=(200, 0, 0))


def photographed(folder: Path, **pictures: bytes) -> Path:
    """Data with a fleece and a photo of it for each picture, named."""
    photos = [photo_of(folder, id, one) for id, one in pictures.items()]
    return make_data(folder, a_book(a_fleece(), *photos))


def photo_of(folder: Path, id: str, content: bytes) -> Photo:
    folder.mkdir(parents=True, exist_ok=True)
    digest = keep_picture(folder, content)
    return a_photo(id, sha256=digest, bytes=len(content), fleece_id="Bramble")


def digest_of(book: Book, id: str) -> str:
    return next(one.sha256 for one in book.photos if one.id == id)


def lost(folder: Path) -> list[str]:
    return [one.id for one in book_in(folder).photos if state_of(folder, one.sha256)]


def overwrite(folder: Path, digest: str) -> None:
    file = photos_folder(folder) / file_name(digest)
    file.write_bytes(torn(file.read_bytes() * 9))


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return photographed(tmp_path / "data", grey=GREY, red=RED)


# One picture


def test_a_picture_is_named_by_what_is_in_it_and_comes_out_as_it_went_in(tmp_path: Path) -> None:
    digest = keep_picture(tmp_path, GREY)
    assert [one.name for one in photos_folder(tmp_path).iterdir()] == [file_name(digest)]
    assert read_picture(tmp_path, digest) == GREY
    assert keep_picture(tmp_path, GREY) == digest
    assert names_there(tmp_path) == [file_name(digest)]


def test_it_and_its_folder_reach_the_disk_before_it_counts_as_kept(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    synced: list[str] = []
    fsync = os.fsync

    def watched(number: int) -> None:
        synced.append(Path(os.readlink(f"/proc/self/fd/{number}")).name)
        fsync(number)

    monkeypatch.setattr(os, "fsync", watched)
    digest = keep_picture(tmp_path, GREY)
    assert synced == [tmp_path.name, f"{digest}.part", "photos"]


def test_a_disk_without_room_leaves_no_half_picture(tmp_path: Path) -> None:
    for limit in range(0, len(GREY), len(GREY) // 6):
        with pytest.raises(NotSaved), no_file_longer_than(limit):
            keep_picture(tmp_path, GREY)
        assert list(photos_folder(tmp_path).iterdir()) == []


@pytest.mark.parametrize("step", ["_make", "move_into_place"])
def test_any_step_of_keeping_may_fail(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, step: str
) -> None:
    def fail(*_arguments: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(room, step, fail)
    with pytest.raises(NotSaved, match="No space left"):
        keep_picture(tmp_path, GREY)
    assert names_there(tmp_path) == []


def test_one_that_came_to_harm_is_found_and_mended_by_keeping_it_again(tmp_path: Path) -> None:
    digest = keep_picture(tmp_path, GREY)
    overwrite(tmp_path, digest)
    assert state_of(tmp_path, digest) == "damaged"
    with pytest.raises(Damaged, match="is damaged"):
        read_picture(tmp_path, digest)
    keep_picture(tmp_path, GREY)
    assert read_picture(tmp_path, digest) == GREY


@pytest.mark.parametrize(
    "digest", ["0f" * 32, "", "../tallyhank", "../" * 20 + "etc/passwd", "A" * 64, "0f" * 32 + "\n"]
)
def test_a_digest_that_names_no_picture_reads_nothing(folder: Path, digest: str) -> None:
    assert state_of(folder, digest) == "missing"
    with pytest.raises(Damaged, match="is missing"):
        read_picture(folder, digest)


def test_a_session_knows_its_folder(folder: Path) -> None:
    store = open_store(folder)
    with store.reading() as session:
        assert folder_of(session) == folder
    store.close()


# Backup and restore


def test_a_backup_has_every_picture_once(folder: Path) -> None:
    backup(folder)
    backup(folder)
    kept = photos_folder(backups_folder(folder))
    assert sorted(one.name for one in kept.iterdir()) == names_there(folder)
    assert {one.read_bytes() for one in kept.iterdir()} == {GREY, RED}


def test_a_backup_taken_elsewhere_brings_its_pictures(folder: Path, tmp_path: Path) -> None:
    file = backup(folder)
    rmtree(photos_folder(folder))
    other = tmp_path / "other"
    restore(file, other)
    assert book_in(other) == book_in(folder)
    assert lost(other) == []
    assert lost(folder) == ["grey", "red"]


def test_a_damaged_picture_is_mended_by_a_restore(folder: Path) -> None:
    file = backup(folder)
    overwrite(folder, digest_of(book_in(folder), "red"))
    assert lost(folder) == ["red"]
    restore(file, folder)
    assert lost(folder) == []


def test_a_lost_picture_does_not_keep_the_rest_from_being_backed_up(
    folder: Path, tmp_path: Path
) -> None:
    overwrite(folder, digest_of(book_in(folder), "red"))
    other = tmp_path / "other"
    restore(backup(folder), other)
    assert lost(other) == ["red"]


def test_a_backup_whose_pictures_were_left_behind_still_brings_the_data(
    folder: Path, tmp_path: Path
) -> None:
    file = backup(folder)
    alone = file.rename(tmp_path / file.name)
    restore(alone, tmp_path / "other")
    assert lost(tmp_path / "other") == ["grey", "red"]
    restore(alone, folder)
    assert lost(folder) == []


def test_the_pictures_of_what_was_there_before_are_kept(folder: Path, tmp_path: Path) -> None:
    other = photographed(tmp_path / "other", blue=a_picture(colour=(0, 0, 200)))
    kept = restore(backup(folder), other)
    assert kept is not None
    again = tmp_path / "again"
    restore(kept, again)
    assert lost(again) == []
    assert [one.id for one in book_in(again).photos] == ["blue"]


def test_the_pictures_of_data_that_cannot_be_read_are_kept(folder: Path, tmp_path: Path) -> None:
    file = backup(folder)
    other = photographed(tmp_path / "other", blue=a_picture(colour=(0, 0, 200)))
    database_file(other).write_bytes(b"a torn file " * 4096)
    restore(file, other)
    digest = keep_picture(tmp_path, a_picture(colour=(0, 0, 200)))
    assert (photos_folder(backups_folder(other)) / file_name(digest)).exists()


def test_a_backup_without_room_for_its_pictures_is_no_backup(folder: Path) -> None:
    def files() -> list[Path]:
        return [one for one in backups_folder(folder).rglob("*") if one.is_file()]

    size = database_file(folder).stat().st_size
    large = os.urandom(size * 3)
    with_large = photo_of(folder, "large", large)
    store = open_store(folder)
    with store.writing() as session:
        put(session, with_large)
    store.close()
    with pytest.raises(NotSaved), no_file_longer_than(size * 2):
        backup(folder)
    assert [one for one in files() if one.suffix in (".sqlite", ".part")] == []
    assert lost(folder) == []


def test_a_restore_without_room_for_the_pictures_leaves_the_data_as_it_was(
    folder: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fail(*_arguments: object) -> None:
        raise OSError(28, "No space left on device")

    other = make_data(tmp_path / "other", a_book(a_fleece("Sorrel")))
    file = backup(folder)
    monkeypatch.setattr(restoring, "copy_pictures", fail)
    with pytest.raises(NotSaved, match="could not be restored"):
        restore(file, other)
    assert [one.name for one in book_in(other).fleeces] == ["Sorrel"]


def test_a_row_that_names_a_path_copies_nothing(folder: Path, tmp_path: Path) -> None:
    assert copy_pictures(["../tallyhank.sqlite"], photos_folder(folder), tmp_path / "x") == [
        "../tallyhank.sqlite"
    ]
    assert not (tmp_path / "x").exists()


def test_data_from_before_there_were_photos_names_none() -> None:
    oldest = min(OLDER.glob("*.sqlite"))
    assert names_in(oldest) == []


# Killed at any step

KILLED = """
import os, sys
from pathlib import Path
from app.store import photos
from app.store.engine import open_store
from app.store.records import put
from tests.books import a_photo

folder, step = Path(sys.argv[1]), sys.argv[2]
die = lambda *_: os._exit(9)
store = open_store(folder)
with store.writing() as session:
    if step == "half":
        photos.Path.write_bytes = lambda self, content: (self.open("wb").write(b"half"), die())
    if step == "not in place":
        photos.move_into_place = die
    digest = photos.keep_picture(folder, b"a new picture")
    if step == "no row":
        die()
    put(session, a_photo("new", sha256=digest, fleece_id="Bramble"))
    if step == "not saved":
        die()
die()
"""


@pytest.mark.parametrize("step", ["half", "not in place", "no row", "not saved", "saved"])
def test_killed_at_any_step_there_is_the_photo_with_its_picture_or_neither(
    folder: Path, step: str
) -> None:
    ended = subprocess.run([sys.executable, "-c", KILLED, folder, step], cwd=ROOT, check=False)
    assert ended.returncode == 9
    assert lost(folder) == []
    assert len(book_in(folder).photos) == 2 + (step == "saved")
    store = open_store(folder)
    assert len(sweep(store)) == (step != "saved")
    store.close()
    assert len(names_there(folder)) == 2 + (step == "saved")


# Sweeping


@pytest.fixture
def store(folder: Path) -> Iterator[Store]:
    opened = open_store(folder)
    yield opened
    opened.close()


def test_what_no_photo_names_is_swept_and_nothing_else(store: Store) -> None:
    place = photos_folder(store.folder)
    red = digest_of(book_in(store.folder), "red")
    (place / f"{'0a' * 32}.part").write_bytes(b"half a pict")
    (place / "my own notes.txt").write_text("leave me")
    with store.writing() as session:
        remove(session, a_photo("red", sha256=red, fleece_id="Bramble"))
    assert sorted(sweep(store)) == sorted([file_name(red), f"{'0a' * 32}.part"])
    assert lost(store.folder) == []
    assert sorted(one.name for one in place.iterdir())[1:] == ["my own notes.txt"]
    assert sweep(store) == []


def test_a_picture_of_two_photos_stays_while_one_names_it(store: Store) -> None:
    photo = next(one for one in book_in(store.folder).photos if one.id == "red")
    with store.writing() as session:
        put(session, replace(photo, id="red again"))
        remove(session, photo)
    assert sweep(store) == []


def test_sweeping_saves_nothing_and_is_no_change(store: Store) -> None:
    with store.reading() as session:
        before = (
            room.folder_of(session),
            session.connection().exec_driver_sql("SELECT version FROM data_version").scalar(),
        )
    keep_picture(store.folder, a_picture(colour=(1, 2, 3)))
    assert len(sweep(store)) == 1
    with store.reading() as session:
        assert (
            before[1]
            == session.connection().exec_driver_sql("SELECT version FROM data_version").scalar()
        )


def test_no_photos_nothing_to_sweep(tmp_path: Path) -> None:
    opened = open_store(tmp_path / "new")
    assert sweep(opened) == []
    opened.close()
