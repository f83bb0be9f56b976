"""An order of the garments is looked at, kept in the store, and undone exactly."""

from dataclasses import replace
from datetime import date

import pytest
from sqlmodel import Session

from app.book.exchange import dumps
from app.store.records import load_book, put
from app.work.reckoning import current
from app.work.shelf_covers import OrderGone, keep_order, order_stamp, what_covers
from app.work.undo_records import remember, undo_change

DAY = date(2026, 11, 25)


def test_looking_at_an_order_is_what_keeping_it_gives(writing: Session) -> None:
    known = current(writing)
    covers = what_covers(known, "garments", order=("hat", "pullover"), anew=True)
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
    known = current(writing)
    assert what_covers(known, "wool", order=("pullover", "hat")).other is None
    assert what_covers(known, "wool", order=("pullover", "hat"), anew=True).other is not None
    assert what_covers(known, "wool", order=("nobody",)).other is None
    assert what_covers(known, "wool").standards == ()


def test_plans_that_changed_meanwhile_are_not_put_in_order(writing: Session) -> None:
    was = load_book(writing)
    put(writing, replace(was.plan["hat"], notes="for the fair"))
    with pytest.raises(OrderGone):
        keep_order(writing, ("hat", "pullover"), False, order_stamp(was))
