"""A way out is taken in the store, and undone: the book and the plan are as they were, exactly."""

import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace
from datetime import date

import pytest
from sqlmodel import Session

from app import paths
from app.book.exchange import dumps, loads
from app.book.plan import Promise
from app.planning.ways_out.judged import Looked
from app.store.engine import Store, open_store
from app.store.fill import fill
from app.store.records import load_book, put
from app.work.reckoning import current
from app.work.undo_records import remember, undo_change
from app.work.ways_out import (
    NoSuchWay,
    look_again,
    look_at,
    offer_stamp,
    stop_ways,
    take_way,
    ways_looked_for,
    ways_now,
)

DAY = date(2026, 11, 25)


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Store]:
    """The demo, in which three garments are short."""
    store = open_store(tmp_path_factory.mktemp("demo") / "data")
    with store.writing() as session:
        fill(session, loads(paths.DEMO.read_text(encoding="utf-8")))
    yield store
    store.close()


@contextmanager
def given_up(store: Store) -> Iterator[Session]:
    """A session that may write, and saves nothing."""
    with store.writing() as session:
        yield session
        session.rollback()


def offers(session: Session) -> list[tuple[str, str, str]]:
    """(plan, key, stamp) of every way out there is."""
    known = current(session)
    return [
        (plan.id, one.proposal.key, offer_stamp(known.book, one))
        for plan in known.book.plans
        for one in ways_now(session, plan.id)
    ]


def test_each_way_keeps_its_promise_and_is_undone_exactly(demo: Store) -> None:
    with demo.reading() as session:
        found = offers(session)
        whole = dumps(load_book(session))
    assert len(found) > 10
    for plan_id, key, stamp in found:
        with given_up(demo) as session:
            was = load_book(session)
            judged = take_way(session, plan_id, key, stamp)
            after = current(session).reckoning.plan(judged.proposal.about)
            if judged.proposal.change == judged.proposal.seen:
                assert after.odds == pytest.approx(judged.after.odds, abs=1e-9), key
                assert after.short_m == pytest.approx(judged.after.short_m, abs=1e-6), key
            undo_change(session, remember(session, was, "taken"), DAY)
            assert dumps(load_book(session)) == whole, key


def test_what_is_to_be_spun_keeps_its_promise_once_it_is_there(demo: Store) -> None:
    with demo.reading() as session:
        known = current(session)
        for plan in known.book.plans:
            for one in ways_now(session, plan.id):
                if one.proposal.seen.to_come:
                    seen = look_at(session, plan.id, one.proposal.key)
                    there = seen.after[1].plan(plan.id)
                    assert there.odds == pytest.approx(one.after.odds)
                    assert seen.before == (known.book, known.reckoning)


def test_looked_for_once_for_each_state_of_the_data(demo: Store) -> None:
    with demo.reading() as session:
        plan_id, *_ = offers(session)[0]
        assert ways_now(session, plan_id) is ways_now(session, plan_id)
    with given_up(demo) as session:
        first = ways_now(session, plan_id)
        put(session, replace(load_book(session).plan[plan_id], notes="in time for the fair"))
        assert ways_now(session, plan_id) is not first


def test_what_does_not_stand_any_more_is_not_taken(demo: Store) -> None:
    with demo.reading() as session:
        found = {key: (plan_id, stamp) for plan_id, key, stamp in offers(session)}
    plan_id, stamp = found["shorten-sleeves"]
    with given_up(demo) as session:
        plan = load_book(session).plan[plan_id]
        put(session, replace(plan, notes="in a hurry"))
        with pytest.raises(NoSuchWay):
            take_way(session, plan_id, "shorten-sleeves", stamp)
        with pytest.raises(NoSuchWay):
            take_way(session, plan_id, "wish", stamp)
        with pytest.raises(NoSuchWay):
            look_at(session, plan_id, "wish")


def test_a_stamp_does_not_hang_on_the_moment_it_was_made(demo: Store) -> None:
    """Promises get new ids each time they are proposed; what they promise is the same."""
    with demo.reading() as session:
        first, second = dict(_stamps(session)), dict(_stamps(session))
    assert first == second


def _stamps(session: Session) -> Iterator[tuple[str, str]]:
    known = current(session)
    for plan in known.book.plans[:3]:
        for one in ways_now(session, plan.id):
            again = look_at(session, plan.id, one.proposal.key).judged
            promises = [put for put in again.proposal.change.put if isinstance(put, Promise)]
            assert len({put.id for put in promises}) == len(promises)
            yield one.proposal.key, offer_stamp(known.book, again)


def test_on_a_large_shelf_they_are_looked_for_beside_the_program(
    demo: Store, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Kind by kind, to the same end; stopped, what was found stays until it is looked for anew."""
    with demo.reading() as session:
        short = next(one.plan_id for one in current(session).reckoning.plans if one.short_m > 0)
        at_once, _ = ways_looked_for(session, short)
        monkeypatch.setattr("app.work.ways_out.AT_ONCE", 0)
        assert ways_looked_for(session, short)[1]
        looked = _all_looked_for(session, short)
        assert said(looked) == said(at_once)
        look_again(session, short)
        assert ways_looked_for(session, short)[1]
        stop_ways(session, short)
        stopped, going_on = ways_looked_for(session, short)
        assert not going_on
        assert stopped.looked < stopped.of
        enough = next(one.plan_id for one in current(session).reckoning.plans if one.enough)
        assert ways_looked_for(session, enough) == (Looked((), looked.of, looked.of), False)


def said(looked: Looked) -> tuple[object, ...]:
    """What was found, but for the ids that new promises get."""
    ways = [(one.proposal.key, one.proposal.title, one.after.odds) for one in looked.ways]
    return looked.looked, looked.of, ways


def _all_looked_for(session: Session, plan_id: str) -> Looked:
    for _ in range(1200):
        looked, going_on = ways_looked_for(session, plan_id)
        if not going_on:
            return looked
        time.sleep(0.1)
    raise AssertionError("it did not end")
