"""The program proposes skeins with its reasons; the maker keeps or drops them."""

from collections.abc import Iterable
from dataclasses import replace

import pytest
from sqlmodel import Session

from app.book.plan import Promise
from app.book.shape import Counted
from app.store.records import load_book, put
from app.work.promise_fill import drop_proposed, fill_plan, keep_proposed
from app.work.promise_make import take_off
from app.work.reckoning import current
from tests.books import a_part


def proposed(promises: Iterable[Promise]) -> list[Promise]:
    return [one for one in promises if one.state == "proposed"]


def ideas(session: Session) -> list[str]:
    return [one.holding_id for one in proposed(load_book(session).promises)]


def test_each_proposed_skein_has_its_reason(writing: Session) -> None:
    assert fill_plan(writing, "pullover") == len(ideas(writing)) > 0
    assert all(one.why for one in proposed(load_book(writing).promises))


def test_what_was_kept_is_not_moved(writing: Session) -> None:
    fill_plan(writing, "pullover")
    kept = [one for one in load_book(writing).promises if one.state == "kept"]
    assert [(one.id, one.mm) for one in kept] == [("G-1 promised", 100_000)]


def test_filling_again_proposes_the_same_in_place_of_the_old(writing: Session) -> None:
    fill_plan(writing, "pullover")
    first = sorted((one.part_id, one.holding_id, one.mm) for one in load_book(writing).promises)
    fill_plan(writing, "pullover")
    assert first == sorted(
        (one.part_id, one.holding_id, one.mm) for one in load_book(writing).promises
    )


def test_a_proposal_takes_nothing_twice(writing: Session) -> None:
    fill_plan(writing, "pullover")
    assert current(writing).reckoning.uncovered == ()


def test_kept_as_a_whole_or_one_by_one(writing: Session) -> None:
    count = fill_plan(writing, "pullover")
    one = proposed(load_book(writing).promises)[0]
    assert keep_proposed(writing, "pullover", one.id) == 1
    assert keep_proposed(writing, "pullover") == count - 1
    assert ideas(writing) == []
    assert {each.state for each in load_book(writing).promises} == {"kept"}


def test_kept_for_what_is_being_knit_it_is_settled(writing: Session) -> None:
    put(writing, replace(load_book(writing).plan["pullover"], state="being knit"))
    fill_plan(writing, "pullover")
    keep_proposed(writing, "pullover")
    assert "settled" in {each.state for each in load_book(writing).promises}


def test_dropped_as_a_whole_or_one_by_one(writing: Session) -> None:
    count = fill_plan(writing, "pullover")
    one = proposed(load_book(writing).promises)[0]
    assert drop_proposed(writing, "pullover", one.id) == 1
    assert drop_proposed(writing, "pullover") == count - 1
    assert [each.id for each in load_book(writing).promises] == ["G-1 promised"]


def test_a_garment_that_is_gone_cannot_be_filled(writing: Session) -> None:
    with pytest.raises(KeyError):
        fill_plan(writing, "mittens")


def test_once_kept_a_garment_the_shelf_can_cover_is_covered(writing: Session) -> None:
    """Parts are promised their need; tails, swatch and mending are set aside with the reserve."""
    take_off(writing, load_book(writing).promises[0])
    put(writing, a_part("crown", plan_id="hat", shape=Counted(100, 20)))
    fill_plan(writing, "hat")
    keep_proposed(writing, "hat")
    assert current(writing).reckoning.plan("hat").enough
