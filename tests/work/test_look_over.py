"""The look over everything: nothing wrong, or each thing that is."""

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from app.store.engine import Store, open_store
from app.store.fill import fill
from app.store.photos import file_name, keep_picture, photos_folder
from app.work.keep import back_up
from app.work.look_over import look_over
from tests.books import a_book, a_part, a_photo, a_plan, a_promise, a_skein, a_yarn
from tests.pictures import a_picture
from tests.store.every_kind import EVERY_KIND


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    opened = open_store(tmp_path)
    yield opened
    opened.close()


def test_a_sound_book_has_nothing_wrong(store: Store) -> None:
    with store.writing() as session:
        fill(session, replace(EVERY_KIND, photos=()))
    with store.reading() as session:
        assert look_over(session) == []


def test_a_photo_whose_picture_is_missing_or_damaged_is_named(store: Store) -> None:
    digest = keep_picture(store.folder, a_picture())
    harmed = keep_picture(store.folder, a_picture(colour=(200, 0, 0)))
    (photos_folder(store.folder) / file_name(harmed)).write_bytes(b"a shopping list")
    with store.writing() as session:
        photos = (
            a_photo("sound", sha256=digest),
            a_photo("harmed", sha256=harmed, caption="in the rain"),
            a_photo("gone", caption="in the sun"),
        )
        fill(session, a_book(*photos))
    with store.reading() as session:
        found = [str(one) for one in look_over(session)]
    assert sorted(found) == [
        f"photo in the rain, sha256: Its picture is damaged: photos/{harmed}.jpg.",
        f"photo in the sun, sha256: Its picture is missing: photos/{'0f' * 32}.jpg.",
    ]


def test_promises_the_shelf_lost_are_named_in_metres(store: Store) -> None:
    promise = a_promise(mm=300_000)
    book = a_book(a_yarn(), a_skein(), a_plan(), a_part(), promise, held={"G-1": (96, 213)})
    with store.writing() as session:
        fill(session, book)
    with store.reading() as session:
        found = [str(one) for one in look_over(session)]
    assert any(text.startswith("pullover, body, promises: 87.0 m of G-1") for text in found)


def test_a_backup_can_be_made_of_it(store: Store) -> None:
    assert back_up(store.folder).is_file()
