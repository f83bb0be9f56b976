from datetime import timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st
from sqlmodel import Session

from app.book.checks import check
from app.book.words import WoolState
from app.store.records import load_book
from app.work.fleece_step import STAGE, WOOL_STATES, is_step, reading_state
from app.work.fleece_weigh import weigh_fleece
from app.work.weighing_note import words_noted
from tests.work.flock import DAY, a_raw_fleece, grams, now, weight


def weigh(session: Session, amount: float, state: WoolState, after_days: int = 1):
    return weigh_fleece(
        session, now(session), weight(amount, state), state, DAY + timedelta(after_days)
    )


def test_a_step_sends_what_it_took_to_waste(writing: Session):
    a_raw_fleece(writing)
    weighed = weigh(writing, 1700, "skirted")
    assert weighed.event is not None
    assert (weighed.event.kind, words_noted(weighed.event)) == ("prepare", "raw to skirted")
    assert (weighed.gained_mg, grams(writing), grams(writing, "waste")) == (-300_000, 1700, 300)
    assert now(writing).state == "skirted"


@pytest.mark.parametrize("state", ["skirted", "drying", "scoured", "carded", "combed"])
def test_every_preparation_is_a_step(writing: Session, state: WoolState):
    a_raw_fleece(writing)
    weigh(writing, 900, state)
    assert (grams(writing), grams(writing, "waste")) == (900, 1100)


def test_a_step_that_took_nothing_still_leaves_its_mark(writing: Session):
    a_raw_fleece(writing)
    weighed = weigh(writing, 2000, "skirted")
    assert weighed.event is not None
    assert grams(writing) == 2000
    assert now(writing).state == "skirted"
    assert check(load_book(writing)) == []


def test_wool_that_weighs_more_after_a_step_has_taken_up_water(writing: Session):
    a_raw_fleece(writing, 500, "scoured")
    weigh(writing, 510, "carded")
    assert (grams(writing, "waste"), grams(writing, "weighing and moisture")) == (0, -10)


def test_drying_loses_water_and_makes_no_waste(writing: Session):
    a_raw_fleece(writing, 1500, "drying")
    weigh(writing, 900, "scoured")
    assert (grams(writing, "waste"), grams(writing, "weighing and moisture")) == (0, 600)


def test_damp_weighings_are_kept_and_move_nothing(writing: Session):
    a_raw_fleece(writing, 1500, "drying")
    assert weigh(writing, 1200, "drying").event is None
    assert grams(writing) == 1500
    readings = load_book(writing).readings_of[now(writing).id]
    assert [(one.value, one.wool) for one in readings] == [(1_500_000, "damp"), (1_200_000, "damp")]


def test_a_part_spun_fleece_is_weighed_with_its_bobbins_and_makes_no_waste(writing: Session):
    a_raw_fleece(writing, 500, "carded")
    weigh(writing, 495, "part spun")
    assert (grams(writing, "waste"), grams(writing, "weighing and moisture")) == (0, 5)


def test_a_state_further_back_puts_a_slip_right(writing: Session):
    a_raw_fleece(writing, 2000, "scoured")
    weighed = weigh(writing, 2000, "raw")
    assert weighed.event is not None
    assert (weighed.event.kind, words_noted(weighed.event)) == ("correct", "scoured to raw")
    assert (now(writing).state, grams(writing)) == ("raw", 2000)


def test_weighing_the_same_again_moves_nothing(writing: Session):
    a_raw_fleece(writing)
    assert weigh(writing, 2000, "raw").event is None


def test_a_weighing_of_an_earlier_day_does_not_overrule_a_later_one(writing: Session):
    a_raw_fleece(writing)
    assert weigh(writing, 1990, "raw", after_days=-3).event is None
    assert grams(writing) == 2000


@pytest.mark.property
@given(st.sampled_from(WOOL_STATES), st.sampled_from(WOOL_STATES))
def test_a_step_always_leads_forward(before: WoolState, after: WoolState):
    if is_step(before, after):
        assert STAGE[after] > STAGE[before]
        assert not is_step(after, before)


def test_every_state_has_its_place_and_its_way_of_being_weighed():
    assert set(STAGE) == set(WOOL_STATES)
    assert {state: reading_state(state) for state in WOOL_STATES} == {
        "raw": "in the grease",
        "skirted": "in the grease",
        "drying": "damp",
        "scoured": "dry",
        "carded": "dry",
        "combed": "dry",
        "part spun": "dry",
    }
