"""Thousands of steps with corrections, through the store: nothing is lost, and harm is named."""

from pathlib import Path

import pytest
from sqlalchemy import text

from app.book.checks import check
from app.book.event import balances
from app.store.balance import rebuild_balances, wrong_balances
from app.store.engine import Store, open_store
from app.store.records import load_book, post, put
from app.work.look_over import look_over
from tests.wool_history import a_random_history

STEPS = 2_500


@pytest.fixture(scope="module")
def told():
    return a_random_history(STEPS, seed=7)


@pytest.fixture(scope="module")
def kept(told, tmp_path_factory: pytest.TempPathFactory) -> Store:
    """A store in which all of it was entered, event by event."""
    store = open_store(tmp_path_factory.mktemp("history") / "data")
    with store.writing() as session:
        for one in told.holdings:
            put(session, one)
        for event in told.events:
            post(session, event.kind, event.day, event.lines, event.note, event.undoes)
    return store


@pytest.mark.property
def test_in_every_event_the_grams_balance(told):
    assert len(told.events) > 2_000
    assert {event.kind for event in told.events} >= {"arrive", "prepare", "spin", "use", "correct"}
    assert sum(event.kind == "undo" for event in told.events) > 50
    assert all(sum(line.mg for line in event.lines) == 0 for event in told.events)


@pytest.mark.property
def test_what_is_held_is_what_a_replay_gives_and_what_the_balances_say(told, kept: Store):
    replay = balances(told.events)
    assert {id: one.mg for id, one in replay.items()} == {id: told.mg[id] for id in replay}
    with kept.reading() as session:
        book = load_book(session)
        assert wrong_balances(session) == []
    assert book.events == tuple(told.events)
    assert book.balances == replay
    assert check(book) == []
    assert sum(one.mg for one in replay.values()) == 0


@pytest.mark.property
def test_balances_made_anew_are_the_same(kept: Store):
    with kept.writing() as session:
        before = session.execute(text("SELECT * FROM balance ORDER BY holding_id")).all()
        rebuild_balances(session)
        assert session.execute(text("SELECT * FROM balance ORDER BY holding_id")).all() == before


@pytest.mark.parametrize(
    ("column", "said"),
    [("mg", "event 100 ("), ("mm", "the wool book and the promises say")],
)
def test_one_corrupted_line_is_found_and_named(
    tmp_path: Path, told, column: str, said: str
) -> None:
    store = open_store(tmp_path / "data")
    with store.writing() as session:
        for one in told.holdings:
            put(session, one)
        for event in told.events[:300]:
            post(session, event.kind, event.day, event.lines, event.note, event.undoes)
    with store.writing() as session:
        session.execute(
            text(f"UPDATE line SET {column} = {column} + 1 WHERE event_seq = 100 AND position = 0")
        )
    line = told.events[99].lines[0]
    code = next(one.code for one in told.holdings if one.id == line.holding_id)
    with store.reading() as session:
        found = [str(one) for one in look_over(session)]
    store.close()
    assert any(said in one for one in found)
    assert any(one.startswith(f"{code}, balance:") for one in found)
    if column == "mg":
        (named,) = [one for one in found if one.startswith("event 100")]
        assert "The grams do not balance: 1 mg too many" in named
        assert code in named
