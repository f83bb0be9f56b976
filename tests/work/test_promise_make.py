"""No metre is promised twice, and a garment may use what is in reserve for it."""

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from sqlmodel import Session

from app.store.records import load_book, put
from app.work.promise_free import BeyondFree, available_mm
from app.work.promise_make import change_promise, promise_skein, take_off
from app.work.reckoning import current
from tests.books import a_plan, a_promise


def free_mm(session: Session, holding_id: str, plan_id: str) -> int:
    return available_mm(current(session).reckoning.shelf[holding_id], plan_id)


def test_a_whole_skein_is_all_that_is_free_of_it(writing: Session) -> None:
    assert promise_skein(writing, "sleeves", "W-1").mm == 150_000
    assert free_mm(writing, "W-1", "pullover") == 0


def test_some_metres_leave_the_rest_free(writing: Session) -> None:
    promise_skein(writing, "sleeves", "W-1", 60_000)
    assert free_mm(writing, "W-1", "hat") <= 90_000


def test_more_of_the_same_skein_is_added_to_its_promise(writing: Session) -> None:
    made = promise_skein(writing, "body", "G-1", 13_000)
    assert (made.id, made.mm) == ("G-1 promised", 113_000)
    assert len(load_book(writing).promises) == 1


def test_beyond_what_is_free_it_is_refused_and_says_who_has_the_rest(writing: Session) -> None:
    with pytest.raises(BeyondFree) as refused:
        promise_skein(writing, "crown", "G-1", 213_001)
    reason = refused.value.reason
    assert reason.asked_mm == 213_001
    assert reason.available_mm <= 113_000
    assert {one.plan_id for one in reason.elsewhere} == {"pullover"}
    assert len(load_book(writing).promises) == 1


def test_a_skein_with_nothing_free_is_refused_whole(writing: Session) -> None:
    promise_skein(writing, "body", "G-1")
    with pytest.raises(BeyondFree) as refused:
        promise_skein(writing, "crown", "G-1")
    assert refused.value.reason.available_mm == 0


def test_a_garment_may_have_its_own_reserve_and_no_other_may(writing: Session) -> None:
    line = current(writing).reckoning.shelf["G-1"]
    assert line.reserved_m > 0
    assert free_mm(writing, "G-1", "pullover") == 113_000
    assert free_mm(writing, "G-1", "hat") < 113_000


def test_what_is_being_knit_gets_its_skeins_settled(writing: Session) -> None:
    put(writing, a_plan("hat", state="being knit"))
    assert promise_skein(writing, "crown", "W-1").state == "settled"
    assert promise_skein(writing, "sleeves", "G-2", 1_000).state == "kept"


def test_a_promise_grows_up_to_what_is_free_and_no_further(writing: Session) -> None:
    promise = load_book(writing).promises[0]
    assert change_promise(writing, promise, 213_000).mm == 213_000
    with pytest.raises(BeyondFree):
        change_promise(writing, load_book(writing).promises[0], 213_001)


def test_what_was_proposed_is_kept_once_she_sets_its_amount(writing: Session) -> None:
    put(writing, a_promise(id="idea", holding_id="G-2", state="proposed", why="it fits"))
    idea = next(one for one in load_book(writing).promises if one.id == "idea")
    assert change_promise(writing, idea, 50_000).state == "kept"


def test_taken_off_it_is_free_again(writing: Session) -> None:
    take_off(writing, load_book(writing).promises[0])
    assert free_mm(writing, "G-1", "hat") == 213_000


@pytest.mark.parametrize(("part", "skein"), [("cuff", "G-1"), ("body", "G-9")])
def test_a_part_or_skein_that_is_gone(writing: Session, part: str, skein: str) -> None:
    with pytest.raises(KeyError):
        promise_skein(writing, part, skein)


@pytest.mark.property
@given(
    asked=st.lists(
        st.tuples(
            st.sampled_from(["body", "sleeves", "crown"]),
            st.sampled_from(["G-1", "G-2", "W-1"]),
            st.one_of(st.none(), st.integers(1, 250_000)),
        ),
        max_size=8,
    )
)
@settings(
    max_examples=25,
    deadline=None,
    suppress_health_check=[HealthCheck.function_scoped_fixture],
)
def test_no_metre_is_promised_twice_whatever_is_asked(
    writing: Session, asked: list[tuple[str, str, int | None]]
) -> None:
    for part, skein, mm in asked:
        try:
            promise_skein(writing, part, skein, mm)
        except BeyondFree:
            continue
    held = {"G-1": 213_000, "G-2": 200_000, "W-1": 150_000}
    for holding_id, most in held.items():
        promised = [one.mm for one in load_book(writing).promises if one.holding_id == holding_id]
        assert sum(promised) <= most
    for promise in load_book(writing).promises:
        take_off(writing, promise)
