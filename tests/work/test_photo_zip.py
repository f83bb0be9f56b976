"""A book with its pictures goes into a ZIP and comes back to the byte, or not at all."""

import json
import os
from collections.abc import Callable, Iterator
from dataclasses import replace
from io import BytesIO
from pathlib import Path
from zipfile import ZIP_BZIP2, ZIP_DEFLATED, ZIP_STORED, ZipFile

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from app.book.book import Book
from app.book.errors import ExchangeError
from app.store.engine import Store, open_store
from app.store.errors import Damaged, Refused, StoreError
from app.store.fill import fill, is_empty
from app.store.photo_sweep import sweep
from app.store.photos import file_name, keep_picture, names_there, photos_folder
from app.store.picture_file import prepare
from app.store.records import load_book
from app.work import photo_zip as room
from app.work.keep import import_file, without_pictures
from app.work.photo_zip import read_zip, write_zip
from tests.books import a_book, a_fleece, a_photo
from tests.pictures import a_picture
from tests.store.faults import no_file_longer_than

PICTURES = {"grey": a_picture(), "red": a_picture(colour=(200, 0, 0))}
Files = dict[str, bytes]


def fresh(folder: Path) -> Store:
    return open_store(folder)


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    """A fleece with two photos, one of them twice."""
    opened = fresh(tmp_path / "one")
    digests = {id: keep_picture(opened.folder, one) for id, one in PICTURES.items()}
    photos = [
        a_photo(id, sha256=digests[of], fleece_id="Bramble", **_size(PICTURES[of]))
        for id, of in (("grey", "grey"), ("red", "red"), ("red again", "red"))
    ]
    with opened.writing() as session:
        fill(session, a_book(a_fleece(), *photos))
    yield opened
    opened.close()


@pytest.fixture
def other(tmp_path: Path) -> Iterator[Store]:
    opened = fresh(tmp_path / "two")
    yield opened
    opened.close()


def _size(content: bytes) -> dict[str, int]:
    return {"bytes": len(content), "width": 60, "height": 40}


def zipped(store: Store) -> bytes:
    file = BytesIO()
    with store.reading() as session:
        write_zip(session, file)
    return file.getvalue()


def taken_in(store: Store, content: bytes) -> Book:
    with store.writing() as session:
        return import_file(session, BytesIO(content))


def files_of(content: bytes) -> Files:
    with ZipFile(BytesIO(content)) as archive:
        return {name: archive.read(name) for name in archive.namelist()}


def zip_of(files: Files, packed: int = ZIP_STORED) -> bytes:
    file = BytesIO()
    with ZipFile(file, "w", packed) as archive:
        for name, content in files.items():
            archive.writestr(name, content)
    return file.getvalue()


def nothing_came_in(store: Store) -> bool:
    with store.reading() as session:
        return is_empty(session) and load_book(session).photos == ()


def refused(store: Store, content: bytes, match: str) -> None:
    with pytest.raises(ExchangeError, match=match):
        taken_in(store, content)
    assert nothing_came_in(store)


def test_there_and_back_to_the_byte(store: Store, other: Store) -> None:
    first = zipped(store)
    taken_in(other, first)
    assert zipped(other) == first
    assert names_there(other.folder) == names_there(store.folder)


def test_its_form_is_fixed(store: Store) -> None:
    with ZipFile(BytesIO(zipped(store))) as archive:
        entries = archive.infolist()
    names = [file_name(one) for one in sorted({p.stem for p in _files(store)})]
    assert [one.filename for one in entries] == ["book.json", *(f"photos/{one}" for one in names)]
    assert {one.date_time for one in entries} == {(1980, 1, 1, 0, 0, 0)}
    assert {one.compress_type for one in entries} == {ZIP_STORED}


def _files(store: Store) -> list[Path]:
    return list(photos_folder(store.folder).iterdir())


def test_one_that_was_packed_again_elsewhere_is_read(store: Store, other: Store) -> None:
    taken_in(other, zip_of(files_of(zipped(store)), ZIP_DEFLATED))
    assert zipped(other) == zipped(store)


def test_a_bare_document_is_read_without_its_pictures(store: Store, other: Store) -> None:
    book = taken_in(other, files_of(zipped(store))["book.json"])
    assert len(book.photos) == 3
    assert names_there(other.folder) == []
    with other.reading() as session:
        told = without_pictures(session, book)
        one = without_pictures(session, replace(book, photos=book.photos[:1]))
    assert told == "3 photos have no picture: the ZIP of an export has them."
    assert one == "One photo has no picture: the ZIP of an export has them."
    with store.reading() as session:
        assert without_pictures(session, book) == ""


def test_a_lost_picture_is_named_and_no_zip_is_made(store: Store) -> None:
    harmed = photos_folder(store.folder) / names_there(store.folder)[0]
    harmed.write_bytes(b"a shopping list")
    with pytest.raises(Damaged, match=r"is damaged\. Bring it back .* \(grey|red"):
        zipped(store)


def changed(files: Files, change: Callable[[Files, str], None]) -> bytes:
    change(files, next(name for name in files if name.startswith("photos/")))
    return zip_of(files)


def _another(files: Files, name: str) -> None:
    files[name] = a_picture(colour=(1, 2, 3))


def _left_out(files: Files, name: str) -> None:
    del files[name]


def _one_more(files: Files, _: str) -> None:
    files[f"photos/{'0a' * 32}.jpg"] = b"who am I"


def _no_book(files: Files, _: str) -> None:
    del files["book.json"]


def _said_otherwise(files: Files, _: str) -> None:
    plain = json.loads(files["book.json"])
    for photo in plain["photos"]:
        photo["width"] = 61
    files["book.json"] = json.dumps(plain).encode()


def _no_json(files: Files, _: str) -> None:
    files["book.json"] = b"{"


@pytest.mark.parametrize(
    ("change", "match"),
    [
        (_another, "not the one that was exported"),
        (_left_out, "has no such file"),
        (_one_more, "no photo of the book"),
        (_no_book, "no exported book"),
        (_said_otherwise, "its size is not what the book says"),
        (_no_json, "is not JSON"),
    ],
)
def test_what_does_not_match_is_refused(
    store: Store, other: Store, change: Callable[[Files, str], None], match: str
) -> None:
    refused(other, changed(files_of(zipped(store)), change), match)
    sweep(other)
    assert names_there(other.folder) == []


@pytest.mark.parametrize(
    "name",
    [
        "../book.json",
        "/etc/passwd",
        "photos/../../tallyhank.sqlite",
        "photos\\x.jpg",
        "C:/x.jpg",
        "photos/",
        "photos/x.svg",
        f"photos/{'0A' * 32}.jpg",
        f"photos/{'0a' * 32}.jpg.exe",
        f"photos/sub/{'0a' * 32}.jpg",
    ],
)
def test_a_name_that_leads_elsewhere_is_refused(
    store: Store, other: Store, name: str, tmp_path: Path
) -> None:
    content = zip_of(files_of(zipped(store)) | {name: b"x"})
    before = _all_under(tmp_path)
    refused(other, content, "does not belong to a book")
    assert _all_under(tmp_path) == before


def _all_under(folder: Path) -> list[Path]:
    return sorted(one for one in folder.rglob("*") if not one.name.endswith(("-wal", "-shm")))


def test_a_bomb_is_refused_by_what_it_says_of_itself(store: Store, other: Store) -> None:
    files = files_of(zipped(store))
    large = files | {f"photos/{'0a' * 32}.jpg": b"\0" * 9_000_000}
    content = zip_of(large, ZIP_DEFLATED)
    assert len(content) < 30_000
    refused(other, content, "too large once unpacked")


def test_one_that_lies_of_its_size_gives_no_more_than_it_says(other: Store) -> None:
    content = zip_of({"book.json": b" " * 1_000_000}, ZIP_DEFLATED)
    lie = content.replace((1_000_000).to_bytes(4, "little"), (100).to_bytes(4, "little"))
    assert lie != content
    refused(other, lie, "damaged or of a kind|not JSON")


@pytest.mark.parametrize(("name", "most"), [("MOST_FILES", 2), ("MOST_IN_ALL", 900)])
def test_too_much_in_all_is_refused(
    store: Store, other: Store, monkeypatch: pytest.MonkeyPatch, name: str, most: int
) -> None:
    content = zipped(store)
    monkeypatch.setattr(room, name, most)
    refused(other, content, "too many files|larger than 8 GB")


@pytest.mark.filterwarnings("ignore:Duplicate name")
def test_a_file_that_is_there_twice_is_refused(store: Store, other: Store) -> None:
    file = BytesIO(zipped(store))
    with ZipFile(file, "a") as archive:
        archive.writestr("book.json", "{}")
    refused(other, file.getvalue(), "there twice")


def test_a_way_of_packing_that_is_not_read_is_said(store: Store, other: Store) -> None:
    refused(other, zip_of(files_of(zipped(store)), ZIP_BZIP2), "packed in a way")


def test_one_with_a_password_is_said(store: Store, other: Store) -> None:
    content = bytearray(zipped(store))
    at = content.rindex(b"PK\x01\x02")
    content[at + 8] |= 1
    refused(other, bytes(content), "password")


def test_a_picture_of_another_kind_is_refused(other: Store, tmp_path: Path) -> None:
    png = a_picture(kind="PNG")
    source = fresh(tmp_path / "three")
    digest = keep_picture(source.folder, png)
    with source.writing() as session:
        fill(session, a_book(a_photo(sha256=digest, media="image/png", **_size(png))))
    content = zipped(source)
    source.close()
    refused(other, content, "no picture of the kind")


def test_a_book_with_records_takes_nothing_in(store: Store) -> None:
    content = zipped(store)
    with pytest.raises(Refused, match="records here already"):
        taken_in(store, content)


def test_every_cut_is_refused(store: Store, other: Store) -> None:
    content = zipped(store)
    for length in range(0, len(content), len(content) // 25):
        with pytest.raises(ExchangeError):
            taken_in(other, content[:length])
    assert nothing_came_in(other)


def test_a_disk_without_room_brings_in_nothing(tmp_path: Path, other: Store) -> None:
    source = fresh(tmp_path / "three")
    large = prepare(_noise()).content
    digest = keep_picture(source.folder, large)
    with source.writing() as session:
        photo = a_photo(sha256=digest, bytes=len(large), width=700, height=700)
        fill(session, a_book(photo))
    content = zipped(source)
    source.close()
    with pytest.raises(StoreError), no_file_longer_than(len(large) // 2):
        taken_in(other, content)
    assert nothing_came_in(other)
    assert names_there(other.folder) == []
    taken_in(other, content)


def _noise() -> bytes:
    from PIL import Image

    from tests.pictures import written

    return written(Image.frombytes("RGB", (700, 700), os.urandom(700 * 700 * 3)), "PNG")


@pytest.mark.property
@settings(
    max_examples=150, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(st.integers(0), st.binary(min_size=1, max_size=6))
def test_a_wounded_zip_is_refused_or_whole(
    store: Store, other: Store, place: int, wound: bytes
) -> None:
    content = zipped(store)
    at = place % len(content)
    try:
        with other.writing() as session:
            book = read_zip(session, BytesIO(content[:at] + wound + content[at + len(wound) :]))
            session.rollback()
    except ExchangeError:
        assert nothing_came_in(other)
        return
    assert {one.sha256 for one in book.photos} == {p.stem for p in _files(store)}
