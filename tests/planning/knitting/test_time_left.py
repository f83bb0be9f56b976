"""Hours left at the needles, a journey, and what a day asks of each week."""

from datetime import date, timedelta

import pytest

from app.planning.hours import hours_for
from app.planning.knitting.time_left import each_week, journey, time_left
from app.planning.learning import Learnt, learn
from tests.books import a_stint, some_progress
from tests.planning.knitting.test_forecast import BODY, ROW_M, SLEEVES, ahead_of

TODAY = date(2026, 5, 1)


def test_by_the_stitches_until_a_pace_is_known():
    """80 rows of 229 stitches at 25 a minute are 12.2 hours."""
    left = time_left(ahead_of(BODY, some_progress(rows=40)), Learnt())
    assert left.hours.value == pytest.approx(80 * 229 / 25 / 60)
    assert left.hours.u == pytest.approx(hours_for(80 * 229).u)
    assert left.metres == pytest.approx(80 * ROW_M, rel=0.01)
    assert not left.learned


def test_at_her_own_pace_once_some_was_noted():
    ahead = ahead_of(BODY, some_progress(rows=40), *(_evening(n) for n in range(12)))
    left = time_left(ahead, learn(ahead.book))
    assert left.learned
    assert left.hours.value == pytest.approx(left.metres / 40, rel=0.08)


def _evening(n):
    """80 m in two hours."""
    return a_stint(f"evening {n}", work="knit", mm=80_000, mg=None)


def test_a_journey_is_told_in_rows():
    ahead = ahead_of(BODY, some_progress(rows=40))
    left = time_left(ahead, Learnt())
    found = journey(ahead, left, left.hours.value / 8)
    assert (found.rows, found.to.rows, found.to.part) == (10, 50, "body")
    assert found.metres == pytest.approx(left.metres / 8)
    assert found.metres < found.most_m <= left.metres


def test_a_journey_goes_on_from_piece_to_piece():
    ahead = ahead_of(BODY, SLEEVES, some_progress(rows=110))
    left = time_left(ahead, Learnt())
    stitches = 10 * 229 + 100 * 60 + 3 * 60
    found = journey(ahead, left, left.hours.value * stitches / ahead.stitches_left)
    assert (found.rows, found.to.piece, found.to.rows) == (113, 2, 3)


def test_a_long_journey_ends_with_the_garment():
    ahead = ahead_of(BODY, some_progress(rows=110))
    found = journey(ahead, time_left(ahead, Learnt()), 100.0)
    assert (found.rows, found.to.whole) == (10, True)


def test_nothing_left_fits_in_no_journey():
    ahead = ahead_of(BODY, some_progress(rows=120))
    assert journey(ahead, time_left(ahead, Learnt()), 2.0) is None


def test_what_a_day_asks_of_each_week():
    left = time_left(ahead_of(BODY, some_progress(rows=40)), Learnt())
    asked = each_week(left, TODAY + timedelta(28), TODAY, evening_h=2.0)
    assert asked.hours.value == pytest.approx(left.hours.value / 4)
    assert asked.evenings == pytest.approx(left.hours.value / 8)


def test_less_than_a_week_asks_for_all_of_it():
    left = time_left(ahead_of(BODY, some_progress(rows=40)), Learnt())
    asked = each_week(left, TODAY + timedelta(3), TODAY, 2.0)
    assert asked.hours.value == pytest.approx(left.hours.value)


@pytest.mark.parametrize("days", [0, -3])
def test_on_the_day_itself_nothing_can_be_asked(days):
    left = time_left(ahead_of(BODY, some_progress(rows=40)), Learnt())
    assert each_week(left, TODAY + timedelta(days), TODAY, 2.0) is None
