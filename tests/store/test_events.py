"""The wool book and the balances beside it."""

from dataclasses import replace
from datetime import date

import pytest
from hypothesis import HealthCheck, given, settings
from sqlmodel import Session

from app.book.book import Book
from app.book.event import Line
from app.book.holding import Holding
from app.store.balance import rebuild_balances, wrong_balances
from app.store.engine import Store, open_store
from app.store.errors import Refused
from app.store.fill import fill
from app.store.records import load_book, post, put, remove
from tests.books import a_book, a_part, a_plan, a_promise, a_skein, a_yarn
from tests.random_books import books

DAY = date(2026, 4, 30)
CAME_IN = (Line("come in", -96_000), Line("G-1", 96_000, 213_000))


def _balance(session: Session, holding_id: str) -> tuple[object, ...]:
    found = session.connection().exec_driver_sql(
        "SELECT mg, mm, promised_mm, free_mm, tex, shelf FROM balance WHERE holding_id = ?",
        (holding_id,),
    )
    return tuple(found.one())


def _with_a_skein(session: Session) -> Holding:
    skein = a_skein()
    fill(session, a_book(a_yarn(), skein, a_plan(), a_part()))
    post(session, "arrive", DAY, CAME_IN)
    return skein


def test_an_event_gets_the_next_number_and_moves_the_balances(store: Store) -> None:
    with store.writing() as session:
        _with_a_skein(session)
        second = post(session, "use", DAY, [Line("G-1", -6_000, -13_000), Line("waste", 6_000)])
        assert second.seq == 2
        assert _balance(session, "G-1") == (90_000, 200_000, 0, 200_000, 450.0, 1)
        assert _balance(session, "come in")[:2] == (-96_000, 0)
    with store.reading() as session:
        assert [one.seq for one in load_book(session).events] == [1, 2]
        assert load_book(session).events[1] == second
        assert wrong_balances(session) == []


def test_grams_that_do_not_balance_are_refused(store: Store) -> None:
    with store.writing() as session:
        _with_a_skein(session)
        with pytest.raises(Refused, match="do not balance"):
            post(session, "arrive", DAY, [Line("come in", -1), Line("G-1", 2)])
        assert _balance(session, "G-1")[0] == 96_000


def test_an_event_is_undone_once(store: Store) -> None:
    back = [Line(line.holding_id, -line.mg, -line.mm) for line in CAME_IN]
    with store.writing() as session:
        _with_a_skein(session)
        post(session, "undo", DAY, back, undoes=1)
        with pytest.raises(Refused):
            post(session, "undo", DAY, back, undoes=1)
    with store.reading() as session:
        assert _balance(session, "G-1")[:2] == (0, 0)
        assert _balance(session, "G-1")[4] is None


def test_promised_metres_follow_promises_and_plans(store: Store) -> None:
    with store.writing() as session:
        _with_a_skein(session)
        put(session, a_promise(mm=100_000))
        assert _balance(session, "G-1")[2:4] == (100_000, 113_000)
        put(session, a_promise(mm=50_000))
        assert _balance(session, "G-1")[2:4] == (50_000, 163_000)
        put(session, a_plan(state="finished"))
        assert _balance(session, "G-1")[2:4] == (0, 213_000)
        put(session, a_plan(state="being knit"))
        assert _balance(session, "G-1")[2:4] == (50_000, 163_000)
        remove(session, a_promise())
        assert _balance(session, "G-1")[2:4] == (0, 213_000)


def test_a_promise_moved_to_another_skein_leaves_the_first(store: Store) -> None:
    with store.writing() as session:
        _with_a_skein(session)
        put(session, a_skein("G-2"))
        put(session, a_promise())
        put(session, replace(a_promise(), holding_id="G-2"))
        assert _balance(session, "G-1")[2] == 0
        assert _balance(session, "G-2")[2] == 100_000


def test_what_is_put_away_leaves_the_shelf(store: Store) -> None:
    with store.writing() as session:
        skein = _with_a_skein(session)
        put(session, replace(skein, put_away=DAY))
        assert _balance(session, "G-1")[5] == 0
        assert wrong_balances(session) == []


def test_wrong_balances_are_found_and_rebuilt(store: Store) -> None:
    with store.writing() as session:
        _with_a_skein(session)
        connection = session.connection()
        connection.exec_driver_sql("UPDATE balance SET mg = mg + 500 WHERE holding_id = 'G-1'")
        connection.exec_driver_sql("DELETE FROM balance WHERE holding_id = 'waste'")
        found = {one.record: one.text for one in wrong_balances(session)}
        assert "96.5 g" in found["G-1"]
        assert "96 g" in found["G-1"]
        assert "nothing" in found["waste"]
        rebuild_balances(session)
        assert wrong_balances(session) == []
        assert _balance(session, "G-1") == (96_000, 213_000, 0, 213_000, 96e6 / 213e3, 1)


@pytest.mark.property
@settings(max_examples=15, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(book=books())
def test_events_posted_one_by_one_give_the_balances_of_the_book(
    book: Book, tmp_path_factory: pytest.TempPathFactory
) -> None:
    store = open_store(tmp_path_factory.mktemp("any"))
    with store.writing() as session:
        fill(session, replace(book, events=(), promises=()))
        for one in book.events:
            assert post(session, one.kind, one.day, one.lines, one.note, one.undoes) == one
        for promise in book.promises:
            put(session, promise)
        assert load_book(session).balances == book.balances
        assert wrong_balances(session) == []
    store.close()
