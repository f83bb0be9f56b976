"""A change is saved, and what it does to the garment is told from before and after."""

from dataclasses import replace

import pytest
from sqlmodel import Session

from app.book.shape import Counted
from app.store.records import load_book, put, remove
from app.work.part_save import change_part
from app.work.plan_effect import save_and_tell
from tests.books import a_plan, a_promise


def test_it_tells_what_the_change_does_and_what_was_answered(writing: Session) -> None:
    """Ten rows of 229 stitches: 41.4 m, and 1 % unusable."""
    body = replace(load_book(writing).part["body"], shape=Counted(229, 130))
    freed, effect = save_and_tell(writing, "pullover", lambda: change_part(writing, body))
    assert freed == 0
    assert effect is not None
    assert effect.m == pytest.approx(41.43 * 1.01, abs=0.5)
    assert load_book(writing).part["body"] == body


def test_a_plan_that_was_not_there_before_has_no_effect(writing: Session) -> None:
    plan = a_plan("mittens", priority=3)
    assert save_and_tell(writing, "mittens", lambda: put(writing, plan)) == (None, None)


def test_nor_has_one_that_is_gone_after(writing: Session) -> None:
    plan = load_book(writing).plan["hat"]
    assert save_and_tell(writing, "hat", lambda: remove(writing, plan)) == (None, None)


def test_a_role_no_longer_knit_is_freed(writing: Session) -> None:
    put(writing, a_promise("W-1", 50_000, role="contrast"))
    assert change_part(writing, load_book(writing).part["body"]) == 1
    assert [one.holding_id for one in load_book(writing).promises] == ["G-1"]
