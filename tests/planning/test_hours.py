"""Hours at the needles, at a usual pace until a maker's own is known."""

import pytest

from app.book.shape import Counted, Metres
from app.planning import reckon
from app.planning.hours import hours_for
from tests.books import a_book, a_part, a_plan, a_stint, a_yarn


def steps(*parts):
    return reckon(a_book(a_yarn(), a_plan(), *parts)).plan("pullover").working


@pytest.mark.golden
def test_15_000_stitches_are_ten_hours_and_may_be_six_or_sixteen():
    """15 000 ÷ 25 ÷ 60 = 10; at 40 and 15 in a minute 6.25 and 16.7: a range of 10.4, nine in
    ten of it within 2 × 1.645 u."""
    found = hours_for(15_000)
    assert found.value == pytest.approx(10)
    assert found.u == pytest.approx((1000 / 60 - 6.25) / 3.2897, abs=0.001)


def test_a_plan_tells_its_hours_for_all_its_pieces():
    sleeves = a_part("sleeves", shape=Counted(75, 100), copies=2, position=2)
    (line,) = [one for one in steps(a_part(shape=Counted(100, 0)), sleeves) if one.unit == "h"]
    assert line.value == pytest.approx(10)
    assert line.standing == "practice"
    assert "15 to 40" in line.how


def test_yarn_for_something_else_takes_no_hours_that_are_known():
    assert "h" not in {one.unit for one in steps(a_part(shape=Metres(9_000)))}


def test_her_own_knitting_takes_the_place_of_the_usual_pace():
    """Nine evenings of 80 m in two hours: near 40 m an hour, less what practice still says."""
    evenings = [
        a_stint(str(i), work="knit", mg=None, mm=80_000, minutes=120, yarn_id=None)
        for i in range(9)
    ]
    book = a_book(a_yarn(), a_plan(), a_part(shape=Counted(100, 100)), *evenings)
    plan = reckon(book).plan("pullover")
    (line,) = [one for one in plan.working if one.unit == "h"]
    assert plan.need.value / 40 < line.value < plan.need.value / 36
    assert line.standing == "measured"
    assert "learned from 9 of your own measurements" in line.how
