"""A whole book into an empty database, all or nothing."""

from dataclasses import replace
from pathlib import Path

import pytest

from app.book.book import Book
from app.book.errors import ExchangeError
from app.book.exchange import in_order
from app.book.settings import Settings
from app.store import fill as room
from app.store.engine import Store, open_store
from app.store.errors import NotSaved, Refused
from app.store.fill import fill, is_empty
from app.store.records import data_version, load_book, put
from app.work.keep import export_book, import_book
from tests.books import a_book, a_fleece, a_skein, an_errand
from tests.store.every_kind import EVERY_KIND
from tests.store.faults import no_file_longer_than


def test_a_document_comes_out_as_it_went_in_to_the_byte(store: Store, tmp_path: Path) -> None:
    with store.writing() as session:
        fill(session, EVERY_KIND)
    with store.reading() as session:
        first = export_book(session)
    other = open_store(tmp_path / "other")
    with other.writing() as session:
        import_book(session, first)
    with other.reading() as session:
        assert export_book(session) == first
    other.close()


def test_settings_alone_are_an_empty_book(store: Store) -> None:
    with store.writing() as session:
        put(session, Settings(decimal=","))
        assert is_empty(session)
        fill(session, EVERY_KIND)
        assert not is_empty(session)
        assert load_book(session).settings == EVERY_KIND.settings


@pytest.mark.parametrize("record", [a_fleece(), an_errand(), a_skein(yarn_id=None)])
def test_any_record_makes_a_book_that_is_not_empty(store: Store, record: object) -> None:
    with store.writing() as session:
        put(session, record)
    with pytest.raises(Refused, match="empty folder"), store.writing() as session:
        fill(session, EVERY_KIND)
    with store.reading() as session:
        assert not is_empty(session)
        assert load_book(session).yarns == ()


def test_filling_is_a_change(store: Store) -> None:
    with store.writing() as session:
        before = data_version(session)
        fill(session, EVERY_KIND)
        assert data_version(session) != before


def test_a_book_whose_links_are_broken_leaves_nothing(store: Store) -> None:
    with pytest.raises(Refused), store.writing() as session:
        fill(session, a_book(a_fleece(), a_skein(yarn_id="never spun")))
    assert _is_new(store)


def test_a_bad_document_leaves_nothing(store: Store) -> None:
    with pytest.raises(ExchangeError), store.writing() as session:
        import_book(session, '{"format": "tallyhank book", "version": 1}')
    assert _is_new(store)


@pytest.mark.parametrize("step", ["write", "write_events", "rebuild_balances", "mark_changed"])
def test_any_step_may_fail(store: Store, monkeypatch: pytest.MonkeyPatch, step: str) -> None:
    def fail(*_arguments: object) -> None:
        raise OSError(5, "Input/output error")

    monkeypatch.setattr(room, step, fail)
    with pytest.raises(OSError, match="Input/output"), store.writing() as session:
        fill(session, EVERY_KIND)
    assert _is_new(store)


def test_a_disk_without_room_leaves_nothing(store: Store) -> None:
    flock = (a_fleece(str(number), notes="x" * 300) for number in range(3000))
    many = replace(EVERY_KIND, fleeces=(a_fleece(), *flock))
    for limit in range(0, 600_000, 60_000):
        with pytest.raises(NotSaved), no_file_longer_than(limit), store.writing() as session:
            fill(session, many)
        assert _is_new(store)


def _is_new(store: Store) -> bool:
    with store.reading() as session:
        return in_order(load_book(session)) == in_order(Book())
