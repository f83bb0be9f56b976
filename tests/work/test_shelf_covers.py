"""An order of the garments is looked at, kept in the store, and undone exactly."""

import time
from dataclasses import replace
from datetime import date
from typing import Any

import pytest
from sqlmodel import Session

from app.book.exchange import dumps
from app.store.engine import Store
from app.store.records import load_book, put
from app.work.reckoning import current
from app.work.shelf_covers import (
    AskedOfShelf,
    Covers,
    OrderGone,
    ask_again,
    covers_so_far,
    keep_order,
    order_stamp,
    stop_covers,
    what_covers,
)
from app.work.undo_records import remember, undo_change

DAY = date(2026, 11, 25)


def test_looking_at_an_order_is_what_keeping_it_gives(writing: Session) -> None:
    known = current(writing)
    covers = what_covers(known, AskedOfShelf("garments", order=("hat", "pullover"), anew=True))
    assert covers.other is not None
    keep_order(writing, ("hat", "pullover"), True, covers.stamp)
    after = current(writing).reckoning
    for plan_id, stands in covers.other.covered.items():
        assert after.plan(plan_id).odds == pytest.approx(stands.odds)
        assert after.plan(plan_id).short_m == pytest.approx(stands.short_m)
    assert load_book(writing).plan["hat"].priority == 1


def test_kept_and_undone_all_is_as_it_was(writing: Session) -> None:
    was = load_book(writing)
    whole = dumps(was)
    moved = keep_order(writing, ("hat", "pullover"), True, order_stamp(was))
    assert moved > 0
    assert dumps(load_book(writing)) != whole
    undo_change(writing, remember(writing, was, "kept"), DAY)
    assert dumps(load_book(writing)) == whole


def test_another_order_is_only_shown_where_it_differs(writing: Session) -> None:
    def covers(**asked: Any) -> Covers:
        return what_covers(current(writing), AskedOfShelf("wool", **asked))

    assert covers(order=("pullover", "hat")).other is None
    assert covers(order=("pullover", "hat"), anew=True).other is not None
    assert covers(order=("nobody",)).other is None
    assert covers().standards == ()


def test_a_large_shelf_is_looked_at_beside_the_program(
    shelf: Store, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked = AskedOfShelf("garments", order=("hat", "pullover"))
    with shelf.reading() as session:
        at_once, going_on = covers_so_far(session, asked)
        assert not going_on
        assert at_once.covers
        monkeypatch.setattr("app.work.shelf_covers.AT_ONCE", 0)
        assert covers_so_far(session, asked)[1]
        stop_covers(session, asked)
        stopped, going_on = covers_so_far(session, asked)
        assert (stopped.covers, going_on) == (None, False)
        ask_again(session, asked)
        found = _answered(session, asked)
        assert (found.alone, found.now) == (at_once.covers.alone, at_once.covers.now)
        assert found.best == at_once.covers.best


def _answered(session: Session, asked: AskedOfShelf) -> Covers:
    for _ in range(1200):
        so_far, _ = covers_so_far(session, asked)
        if so_far.covers:
            return so_far.covers
        time.sleep(0.1)
    raise AssertionError("it did not end")


def test_plans_that_changed_meanwhile_are_not_put_in_order(writing: Session) -> None:
    was = load_book(writing)
    put(writing, replace(was.plan["hat"], notes="for the fair"))
    with pytest.raises(OrderGone):
        keep_order(writing, ("hat", "pullover"), False, order_stamp(was))
