"""Garments stand in the order in which the shelf serves them."""

import pytest
from sqlmodel import Session

from app.book.plan import Plan
from app.planning.turn import in_turn
from app.store.records import load_book, put
from app.work.plan_order import move_plan, moved, next_priority
from tests.books import a_plan


def order(session: Session) -> list[str]:
    return [one.name for one in in_turn(load_book(session).plans)]


def test_what_is_being_knit_comes_first_and_what_is_done_last() -> None:
    states = ("put away", "finished", "intended", "being knit")
    plans = [a_plan(state, state=state) for state in states]
    assert [one.state for one in in_turn(plans)] == list(reversed(states))


def test_a_later_garment_moves_before_an_earlier_one_and_back(writing: Session) -> None:
    assert order(writing) == ["pullover", "hat"]
    assert move_plan(writing, "hat", earlier=True)
    assert order(writing) == ["hat", "pullover"]
    assert move_plan(writing, "hat", earlier=False)
    assert order(writing) == ["pullover", "hat"]


def test_the_first_stays_first_and_the_last_last(writing: Session) -> None:
    assert not move_plan(writing, "pullover", earlier=True)
    assert not move_plan(writing, "hat", earlier=False)
    assert order(writing) == ["pullover", "hat"]


def test_priorities_are_numbered_from_one_without_gaps_or_doubles(writing: Session) -> None:
    put(writing, a_plan("socks", priority=2))
    move_plan(writing, "socks", earlier=True)
    assert sorted(one.priority for one in load_book(writing).plans) == [1, 2, 3]


def test_what_is_intended_does_not_pass_what_is_being_knit(writing: Session) -> None:
    put(writing, a_plan("socks", priority=9, state="being knit"))
    assert not move_plan(writing, "pullover", earlier=True)
    assert order(writing) == ["socks", "pullover", "hat"]


def test_a_garment_that_is_gone_cannot_be_moved(writing: Session) -> None:
    with pytest.raises(KeyError):
        move_plan(writing, "mittens", earlier=True)


def test_a_new_plan_comes_after_all_others() -> None:
    assert next_priority([]) == 1
    assert next_priority([a_plan(priority=4), a_plan("hat", priority=2)]) == 5


@pytest.mark.parametrize(
    ("thing", "earlier", "row"),
    [("b", True, "bac"), ("b", False, "acb"), ("a", True, "abc"), ("c", False, "abc")],
)
def test_one_place_earlier_or_later(thing: str, earlier: bool, row: str) -> None:
    assert moved("abc", thing, earlier) == list(row)


def test_plans_of_one_priority_keep_the_order_in_which_they_were_made() -> None:
    plans = [Plan(id=name, name=name) for name in ("b", "a")]
    assert [one.id for one in in_turn(plans)] == ["a", "b"]
