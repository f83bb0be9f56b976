from dataclasses import replace
from datetime import timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st
from sqlmodel import Session

from app.book.checks import check
from app.book.event_note import words_noted
from app.book.holding import Holding
from app.book.weighed_as import weighed_as
from app.book.words import WOOL_STATES, WoolState
from app.planning import reckon
from app.planning.fleeces import becomes
from app.store.records import load_book, put
from app.work.event_undo import undo_event
from app.work.fleece_step import STAGE, is_step, reading_state
from app.work.fleece_weigh import Weighed, Weighing, weigh_fleece
from tests.work.flock import BRAMBLE, DAY, a_raw_fleece, grams, now, weight


def weigh(session: Session, amount: float, state: WoolState, after_days: int = 1):
    day = DAY + timedelta(after_days)
    return weigh_fleece(session, now(session), Weighing(weight(amount, state), state, day))


def test_a_step_sends_what_it_took_to_waste(writing: Session):
    a_raw_fleece(writing)
    weighed = weigh(writing, 1700, "skirted")
    assert weighed.event is not None
    assert (weighed.event.kind, words_noted(weighed.event)) == ("prepare", "raw to skirted")
    assert (weighed.gained_mg, grams(writing), grams(writing, "waste")) == (-300_000, 1700, 300)
    assert now(writing).state == "skirted"


@pytest.mark.parametrize("state", ["skirted", "scoured", "carded", "combed"])
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


def test_wool_that_begins_to_dry_keeps_its_grams_until_it_is_dry(writing: Session):
    """Damp wool moves nothing; then what the wash took is waste, not moisture."""
    a_raw_fleece(writing)
    weighed = weigh(writing, 1500, "drying")
    assert (weighed.gained_mg, grams(writing), now(writing).state) == (0, 2000, "drying")
    book = load_book(writing)
    assert weighed_as(book, now(writing)) == "raw"
    as_raw = becomes(book, BRAMBLE, [replace(now(writing), state="raw")])
    assert becomes(book, BRAMBLE, [now(writing)])[:2] == as_raw[:2]
    weigh(writing, 900, "scoured", after_days=3)
    assert (grams(writing), grams(writing, "waste")) == (900, 1100)
    assert grams(writing, "weighing and moisture") == 0
    assert weighed_as(load_book(writing), now(writing)) == "scoured"


def test_a_drying_that_was_undone_tells_nothing_of_the_next(writing: Session):
    a_raw_fleece(writing, 1500, "drying")
    weigh(writing, 800, "scoured")
    event = weigh(writing, 1200, "drying").event
    assert weighed_as(load_book(writing), now(writing)) == "scoured"
    assert event is not None
    undo_event(writing, event.seq, DAY)
    put(writing, replace(now(writing), state="drying"))
    assert weighed_as(load_book(writing), now(writing)) == "drying"


def a_part(session: Session, taken: float, amount: float, state: WoolState) -> Weighed:
    done = Weighing(weight(amount, state), state, DAY, round(taken * 1000))
    return weigh_fleece(session, now(session), done)


def parts(session: Session) -> list[Holding]:
    return [one for one in load_book(session).holdings if one.kind == "fibre"]


def test_a_part_that_was_washed_lies_apart_and_the_rest_stays_as_it_was(writing: Session):
    a_raw_fleece(writing, 1842)
    weighed = a_part(writing, 590, 310, "scoured")
    (part,) = parts(writing)
    assert (part.code, part.state, part.fleece_id, part.place) == (
        "Bramble, scoured",
        "scoured",
        "bramble",
        "loft",
    )
    assert (grams(writing), now(writing).state) == (1252, "raw")
    assert (grams(writing, part.id), grams(writing, "waste")) == (310, 280)
    assert weighed.gained_mg == -280_000
    book = load_book(writing)
    assert check(book) == []
    assert [one.value for one in book.readings_of[part.id]] == [310_000]
    assert reckon(book).fleeces["bramble"].now_g == 1562


def test_a_part_named_by_its_state_goes_on_with_the_name_of_the_next_and_back(writing: Session):
    a_raw_fleece(writing, 1842)
    a_part(writing, 590, 310, "scoured")
    (part,) = parts(writing)
    carded = weigh_fleece(writing, part, Weighing(weight(290, "carded"), "carded", DAY))
    assert [one.code for one in parts(writing)] == ["Bramble, carded"]
    assert carded.event
    undo_event(writing, carded.event.seq, DAY)
    assert [(one.code, one.state) for one in parts(writing)] == [("Bramble, scoured", "scoured")]


def test_a_part_she_named_herself_keeps_its_name(writing: Session):
    a_raw_fleece(writing, 1842)
    a_part(writing, 590, 310, "scoured")
    (part,) = parts(writing)
    put(writing, replace(part, code="Bramble, scoured by hand"))
    (named,) = parts(writing)
    weigh_fleece(writing, named, Weighing(weight(290, "carded"), "carded", DAY))
    assert [one.code for one in parts(writing)] == ["Bramble, scoured by hand"]


def test_the_next_part_gets_a_label_of_its_own(writing: Session):
    a_raw_fleece(writing, 1842)
    a_part(writing, 590, 310, "scoured")
    a_part(writing, 600, 320, "scoured")
    assert [one.code for one in parts(writing)] == ["Bramble, scoured", "Bramble, scoured 2"]


def test_undoing_the_work_on_a_part_puts_it_back_to_the_rest(writing: Session):
    a_raw_fleece(writing, 1842)
    before = load_book(writing)
    event = a_part(writing, 590, 310, "scoured").event
    assert event is not None
    undo_event(writing, event.seq, DAY)
    after = load_book(writing)
    assert (grams(writing), now(writing).state, grams(writing, "waste")) == (1842, "raw", 0)
    assert parts(writing)[0].put_away == DAY
    assert after.readings == before.readings
    assert reckon(after).fleeces == reckon(before).fleeces


def test_a_part_that_dries_has_the_grams_that_were_taken(writing: Session):
    a_raw_fleece(writing, 1842)
    a_part(writing, 590, 700, "drying")
    (part,) = parts(writing)
    assert (grams(writing), grams(writing, part.id)) == (1252, 590)
    assert weighed_as(load_book(writing), part) == "raw"
    weigh_fleece(writing, part, Weighing(weight(310, "scoured"), "scoured", DAY))
    assert (grams(writing, part.id), grams(writing, "waste")) == (310, 280)


def test_a_part_is_put_on_the_bobbin_without_waste(writing: Session):
    a_raw_fleece(writing, 500, "carded")
    a_part(writing, 100, 99, "part spun")
    (part,) = parts(writing)
    assert (grams(writing), grams(writing, part.id)) == (400, 99)
    assert (grams(writing, "waste"), grams(writing, "weighing and moisture")) == (0, 1)


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
