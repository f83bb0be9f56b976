"""Records go in and come out as they were; what is pointed to cannot go."""

from dataclasses import fields, replace
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from sqlalchemy import event
from sqlalchemy.engine import Engine

from app.book.book import Book
from app.book.exchange import in_order
from app.book.settings import Settings
from app.store.balance import wrong_balances
from app.store.engine import Store, open_store
from app.store.errors import Refused
from app.store.fill import fill
from app.store.kept import ROWS, table_of
from app.store.records import get, load_book, put, remove
from tests.books import (
    a_book,
    a_fleece,
    a_part,
    a_photo,
    a_plan,
    a_promise,
    a_skein,
    a_yarn,
    an_errand,
)
from tests.random_books import books
from tests.store.every_kind import EVERY_KIND

ONE_OF_EACH = [
    *(getattr(EVERY_KIND, name)[0] for name in ("people", "fleeces", "yarns", "plans", "parts")),
    *(getattr(EVERY_KIND, name)[0] for name in ("readings", "promises", "errands")),
    EVERY_KIND.holding["G-1"],
]


@pytest.mark.parametrize("kind", ROWS)
def test_every_field_has_a_column_and_no_other_column_is_kept(kind: type) -> None:
    known = {field.name for field in fields(kind)}
    more = {"id"} if kind is Settings else {"shelf"}
    assert known <= set(table_of(kind).c.keys()) <= known | more


def test_a_new_store_is_a_new_book(store: Store) -> None:
    with store.reading() as session:
        assert in_order(load_book(session)) == in_order(Book())


@pytest.mark.parametrize("record", ONE_OF_EACH, ids=lambda one: type(one).__name__)
def test_a_record_comes_out_as_it_went_in(store: Store, record: Any) -> None:
    with store.writing() as session:
        fill(session, EVERY_KIND)
    with store.reading() as session:
        assert get(session, type(record), record.id) == record
        assert get(session, type(record), "nobody") is None


def test_settings_are_kept_once(store: Store) -> None:
    with store.writing() as session:
        assert get(session, Settings, "settings") is None
        put(session, Settings(decimal=","))
        put(session, Settings(length_unit="yd"))
    with store.reading() as session:
        assert get(session, Settings, "settings") == Settings(length_unit="yd")
        assert load_book(session).settings == Settings(length_unit="yd")


def test_the_same_id_takes_the_place_of_its_older_self(store: Store) -> None:
    with store.writing() as session:
        put(session, a_fleece(micron=27.0))
        put(session, a_fleece(name="Bramble the elder", micron=None))
    with store.reading() as session:
        assert load_book(session).fleeces == (a_fleece(name="Bramble the elder"),)


def test_a_label_is_given_once(store: Store) -> None:
    with store.writing() as session:
        put(session, a_yarn())
        put(session, a_skein("G-1"))
        with pytest.raises(Refused, match="has this label already"):
            put(session, replace(a_skein("G-2"), code="G-1"))
        put(session, a_skein("G-2"))
    with store.reading() as session:
        assert {"G-1", "G-2"} <= load_book(session).holding.keys()


def test_nothing_points_to_what_is_not_there(store: Store) -> None:
    with store.writing() as session, pytest.raises(Refused, match="point to"):
        put(session, a_skein(yarn_id="never spun"))


def test_what_is_pointed_to_stays(store: Store) -> None:
    with store.writing() as session:
        fill(session, EVERY_KIND)
    for record in (a_part(), a_plan()):
        with pytest.raises(Refused), store.writing() as session:
            remove(session, record)
    with store.reading() as session:
        assert in_order(load_book(session)) == in_order(EVERY_KIND)


def test_a_plan_without_promises_goes_with_its_parts_and_photos(store: Store) -> None:
    kept = a_photo("of a scarf", plan_id="scarf")
    photos = [a_photo(plan_id="pullover"), kept]
    with store.writing() as session:
        scarf = [a_plan("scarf"), a_part("all", "scarf")]
        fill(session, a_book(a_yarn(), a_plan(), a_part(), *scarf, *photos))
        remove(session, a_plan())
    with store.reading() as session:
        book = load_book(session)
    assert [plan.id for plan in book.plans] == ["scarf"]
    assert [part.id for part in book.parts] == ["all"]
    assert book.photos == (kept,)


def test_an_errand_and_a_promise_go(store: Store) -> None:
    with store.writing() as session:
        fill(session, EVERY_KIND)
        remove(session, an_errand())
        remove(session, a_promise())
    with store.reading() as session:
        book = load_book(session)
        assert (book.errands, book.promises) == ((), ())
        assert wrong_balances(session) == []


def test_what_has_a_history_is_never_removed(store: Store) -> None:
    with store.writing() as session, pytest.raises(Refused):
        remove(session, EVERY_KIND.holding["G-1"])  # type: ignore[arg-type]


def test_the_number_of_statements_does_not_grow_with_rows(store: Store) -> None:
    few = _statements_to_load(store)
    with store.writing() as session:
        fill(session, EVERY_KIND)
    assert few == _statements_to_load(store)
    assert sorted(few) == sorted({*few})


def _statements_to_load(store: Store) -> list[str]:
    seen: list[str] = []

    def note(*arguments: Any) -> None:
        seen.append(arguments[2])

    event.listen(Engine, "before_cursor_execute", note)
    with store.reading() as session:
        load_book(session)
    event.remove(Engine, "before_cursor_execute", note)
    return seen


def test_a_wrong_type_is_kept_out_by_the_database(store: Store) -> None:
    with store.writing() as session, pytest.raises(Refused):
        put(session, a_fleece(staple_mm="long"))


@pytest.mark.property
@settings(max_examples=25, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(book=books())
def test_any_book_comes_out_as_it_went_in(
    book: Book, tmp_path_factory: pytest.TempPathFactory
) -> None:
    store = open_store(tmp_path_factory.mktemp("any"))
    with store.writing() as session:
        fill(session, book)
    with store.reading() as session:
        assert in_order(load_book(session)) == in_order(book)
        assert wrong_balances(session) == []
    store.close()
