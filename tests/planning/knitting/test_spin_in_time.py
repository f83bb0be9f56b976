"""A warning early enough to spin: hours of knitting against hours of spinning."""

from datetime import date, timedelta

import pytest

from app.book.settings import Settings
from app.planning import reckon
from app.planning.knitting.fade_when import sure_metres
from app.planning.knitting.forecast import Forecast
from app.planning.knitting.spin_in_time import spin_in_time
from tests.books import (
    a_book,
    a_fleece,
    a_holding,
    a_part,
    a_plan,
    a_promise,
    a_skein,
    a_yarn,
    some_progress,
)

TODAY = date(2026, 5, 1)


def told(rows=20, state="raw", evening=120, plan="being knit", skeins=2):
    codes = [f"G-{n}" for n in range(1, skeins + 1)]
    book = a_book(
        a_fleece(),
        a_holding("F-1", fleece_id="Bramble", state=state),
        a_yarn(fleece_id="Bramble", target_tex=450.0),
        *(a_skein(one) for one in codes),
        a_plan(state=plan),
        a_part(place="body"),
        *(a_promise(one, 200_000) for one in codes),
        some_progress(rows=rows),
        held={"F-1": (3000, 0)} | dict.fromkeys(codes, (90, 200)),
        settings=Settings(evening_minutes=evening),
    )
    reckoning = reckon(book)
    return book, reckoning, spin_in_time(book, reckoning, TODAY)


def test_hours_until_the_yarn_ends_against_those_of_the_wool():
    book, reckoning, (one,) = told()
    ahead = Forecast(book, reckoning.plan("pullover"))
    share = sure_metres(ahead, ahead.yarns[0]) / (100 / 120 * ahead.yarns[0].course.metres)
    assert one.lasts.value == pytest.approx(share * 100 * 229 / 25 / 60, rel=0.01)
    assert one.spin.value > 1
    assert one.short_m == reckoning.plan("pullover").to_make_m


@pytest.mark.parametrize(("state", "days"), [("raw", 6), ("carded", 3)])
def test_what_is_not_washed_dries_twice(state, days):
    assert told(state=state)[2][0].dry_days == days


def test_the_day_to_begin_leaves_time_to_dry():
    _, _, (one,) = told(state="carded", evening=60)
    evenings = int(one.lasts.value)
    assert one.begin_by == TODAY + timedelta(evenings - 3)
    assert one.late_days == 0


def test_too_late_to_be_in_time_says_how_long_the_knitting_waits():
    _, _, (one,) = told(evening=1000)
    assert one.begin_by == TODAY
    assert 0 < one.late_days <= 6


def test_a_garment_that_is_only_intended_waits_for_its_wool_anyway():
    assert told(plan="intended")[2] == ()


def test_enough_yarn_asks_for_no_spinning():
    assert told(skeins=4)[2] == ()


def test_all_rows_done_need_no_wool():
    """What is short is then for tails, and no knitting is left to wait for it."""
    _, reckoning, found = told(rows=120, skeins=0)
    assert reckoning.plan("pullover").to_make_m > 0
    assert found == ()
