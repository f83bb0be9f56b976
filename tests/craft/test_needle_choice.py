import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from app.craft.needle_choice import (
    hand_from,
    needle_by_swatches,
    needle_for,
    sold_next_to,
)
from app.craft.needles import predict_gauge

SWATCHES = [(3.25, 24.0), (3.75, 22.5), (4.0, 21.5), (4.5, 20.4)]


def test_which_needle_for_26_stitches():
    """The check of the prediction backwards: 3.75 mm with yarn of 1.5 mm, h 0.95, R 1.30."""
    choice = needle_for(26.0, 25.4 / 1.5, hand=0.95, rows_per_stitch=1.30)
    assert choice.needle.value == pytest.approx(3.75, abs=0.02)
    thinner, thicker = choice.offers
    assert (thinner[0].mm, thicker[0].mm) == (3.75, 4.0)
    assert thinner[1].stitches.value == pytest.approx(26.0, abs=0.05)


def test_the_working_of_a_needle():
    steps = needle_for(22, 12).steps
    assert [step.what for step in steps] == [
        "Yarn in one stitch",
        "Needle and yarn together",
        "Needle",
    ]
    assert steps[1].value - steps[2].value == pytest.approx(25.4 / 12)
    assert steps[2].u == pytest.approx(needle_for(22, 12).needle.u)


def test_a_loose_hand_wants_a_thinner_needle_and_a_learnt_one_is_surer():
    usual, loose = needle_for(22, 12), needle_for(22, 12, hand=1.06, hand_share=0.03)
    assert loose.needle.value < usual.needle.value
    assert loose.needle.u < usual.needle.u
    assert usual.needle.chief_cause == "the knitter's hand"


def test_a_gauge_counted_before_washing_wants_a_thinner_needle():
    """Fewer stitches in the same loop: for 22 unwashed the loop is shorter."""
    assert needle_for(22, 12, washed=False).needle.value < needle_for(22, 12).needle.value


@pytest.mark.property
@given(st.floats(1, 20), st.floats(2, 40), st.floats(0.8, 1.2), st.booleans())
def test_the_needle_of_a_predicted_gauge_is_the_needle(needle, wraps, hand, washed):
    ahead = predict_gauge(needle, wraps, hand, washed=washed)
    back = needle_for(ahead.stitches.value, wraps, hand, washed=washed)
    assert back.needle.value == pytest.approx(needle, rel=1e-9)


@pytest.mark.property
@given(st.floats(8, 40), st.floats(8, 40))
def test_more_stitches_want_a_thinner_needle(one, other):
    assume(abs(one - other) > 0.01)
    fewer, more = sorted((one, other))
    assert needle_for(more, 40).needle.value < needle_for(fewer, 40).needle.value


@pytest.mark.property
@given(st.floats(1, 20), st.floats(2, 40), st.floats(0.8, 1.2))
def test_a_hand_is_found_again(needle, wraps, hand):
    loop = predict_gauge(needle, wraps, hand).loop.value
    assert hand_from(loop, needle, wraps) == pytest.approx(hand)


def test_sizes_next_to_a_diameter():
    assert [one.mm for one in sold_next_to(3.8)] == [3.75, 4.0]
    assert [one.mm for one in sold_next_to(4.0)] == [4.0]
    assert [one.mm for one in sold_next_to(0.5)] == [1.5]
    assert [one.mm for one in sold_next_to(40)] == [25.0]


def test_the_needle_by_ones_own_swatches():
    """Least squares: mean 3.875 mm and 22.1 stitches, slope −2.375/0.8125."""
    choice = needle_by_swatches(SWATCHES, 21)
    assert choice.needle.value == pytest.approx(3.875 + 1.1 * 0.8125 / 2.375)
    assert 0 < choice.needle.u < 0.3
    assert choice.offers == ()
    assert choice.steps[0].standing == "measured"


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: needle_for(60, 4), "no needle is thin enough"),
        (lambda: needle_for(0, 12), "stitches in 10 cm must be more"),
        (lambda: needle_for(22, 12, hand=0), "the knitter's hand must be more"),
        (lambda: needle_for(22, 12, rows_per_stitch=0), "rows/stitch must be more"),
        (lambda: needle_by_swatches([(4, 22)], 21), "two different places"),
        (lambda: needle_by_swatches([(4, 21), (5, 22)], 21), "do not become looser"),
        (lambda: needle_by_swatches(SWATCHES, 60), "the needle these swatches point to"),
        (lambda: hand_from(0, 4, 12), "yarn in one stitch in cm must be more"),
    ],
)
def test_outside_the_domain(call, words):
    with pytest.raises(ValueError, match=words):
        call()
