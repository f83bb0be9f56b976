from math import hypot

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.craft.figure import Figure
from app.craft.loop_ways import Way, by_gauge, by_needle, by_thread, by_weight, loop_from

TEX = Figure(450, "tex", {"grist": 9.0})

THREAD = by_thread(36.2, 20)
WEIGHT = by_weight(10, 1228, TEX)
GAUGE = by_gauge(22, 30)
NEEDLE = by_needle(4, 12)


def test_each_way_by_hand():
    """36.2/20; 10⁶/(450 × 1228); √(21.6/6.6); π·(4 + 25.4/12)/10."""
    assert THREAD.loop.value == pytest.approx(1.81)
    assert WEIGHT.loop.value == pytest.approx(1.8096, abs=5e-5)
    assert GAUGE.loop.value == pytest.approx(1.8091, abs=5e-5)
    assert NEEDLE.loop.value == pytest.approx(1.9216, abs=5e-5)


def test_all_four_together_are_surer_than_the_surest():
    found = loop_from(THREAD, WEIGHT, GAUGE, NEEDLE)
    assert found.chief == "thread"
    assert found.loop.u < THREAD.loop.u
    assert found.disagree == ()
    expected = sum(1 / way.loop.u**2 for way in (THREAD, WEIGHT, GAUGE, NEEDLE)) ** -0.5
    assert found.loop.u == pytest.approx(expected)


def test_the_working_ends_in_the_sum():
    *ways, whole = loop_from(THREAD, GAUGE).steps
    assert [step.how for step in ways] == ["36.2 cm ÷ 20 stitches", "√(21.6 ÷ (22 × 30 ÷ 100))"]
    assert [step.standing for step in ways] == ["measured", "published"]
    assert whole.how.endswith("most by thread")
    assert "JCGM 100" in whole.source


def test_one_way_alone_needs_no_sum():
    found = loop_from(GAUGE)
    assert found.loop == GAUGE.loop
    assert len(found.steps) == 1


def test_an_unwashed_gauge_takes_the_other_constant():
    unwashed = by_gauge(22, 30, washed=False)
    assert unwashed.how.startswith("√(19 ÷")
    assert unwashed.loop.value < GAUGE.loop.value


def test_a_learnt_hand_weighs_more():
    learnt = by_needle(4, 12, hand=0.94, hand_share=0.03)
    assert learnt.loop.value == pytest.approx(0.94 * NEEDLE.loop.value)
    assert loop_from(GAUGE, learnt).chief == "needle"
    assert loop_from(GAUGE, NEEDLE).chief == "gauge"


def test_ways_that_cannot_both_be_right_are_named():
    found = loop_from(by_thread(46, 20), WEIGHT, GAUGE)
    assert found.disagree == (("thread", "weight"), ("thread", "gauge"))


def test_an_exact_way_is_taken_alone_and_the_sum_says_so():
    sure = Way("weight", Figure(1.8, "cm"), "", "", "measured")
    found = loop_from(sure, GAUGE)
    assert found.loop.value == 1.8
    assert found.steps[-1].how.startswith("1.00 × 1.800 + 0.00 × 1.809")


@pytest.mark.property
@given(st.floats(8, 40), st.floats(8, 60), st.floats(2, 15), st.floats(4, 30))
def test_the_mean_lies_between_and_the_weights_sum_to_one(stitches, rows, needle, wraps):
    gauge, ahead = by_gauge(stitches, rows), by_needle(needle, wraps)
    found = loop_from(gauge, ahead)
    low, high = sorted((gauge.loop.value, ahead.loop.value))
    assert low - 1e-12 <= found.loop.value <= high + 1e-12
    assert sum(found.combined.weights.values()) == pytest.approx(1)
    gap, both = high - low, hypot(gauge.loop.u, ahead.loop.u)
    assert bool(found.disagree) == (gap > 2 * both)


def test_no_way_no_answer():
    with pytest.raises(ValueError, match="nothing to combine"):
        loop_from()
