import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.craft.colour import compared, difference, difference_word, lab

LAB = st.tuples(st.floats(0, 100), st.floats(-80, 80), st.floats(-80, 80))
HEX = st.integers(0, 0xFFFFFF).map(lambda number: f"#{number:06x}")


def test_white_black_and_grey_have_no_hue():
    assert lab("#ffffff") == pytest.approx((100, 0, 0), abs=1e-3)
    assert lab("#000000") == pytest.approx((0, 0, 0), abs=1e-9)
    lightness, a, b = lab("#777777")
    assert 49 < lightness < 51
    assert (a, b) == pytest.approx((0, 0), abs=1e-3)


def test_moorit_is_darker_and_redder_than_undyed_white():
    moorit, white = lab("#6b4a36"), lab("#efe7d8")
    assert moorit[0] < white[0]
    assert moorit[1] > white[1]


@pytest.mark.parametrize("wrong", ["", "6b4a36", "#6b4", "#6b4a3g", "red", "#6b4a36 "])
def test_a_colour_that_is_not_written_as_six_digits_is_refused(wrong):
    with pytest.raises(ValueError, match="a colour is written as # and six digits"):
        lab(wrong)


@pytest.mark.property
@given(LAB, LAB)
def test_the_difference_is_the_same_from_either_side(one, other):
    assert difference(one, other) == pytest.approx(difference(other, one), abs=1e-9)
    assert difference(one, one) == 0
    assert difference(one, other) >= 0


@pytest.mark.property
@given(HEX)
def test_every_colour_of_a_picker_has_its_place(colour):
    assert -1e-9 <= lab(colour)[0] <= 100.001


@pytest.mark.parametrize(
    ("found", "word"),
    [
        (0.0, "not seen as a difference"),
        (0.99, "not seen as a difference"),
        (1.0, "seen on close look, side by side"),
        (2.5, "seen side by side"),
        (3.0, "plainly different"),
        (40.0, "plainly different"),
    ],
)
def test_what_the_eye_makes_of_it(found, word):
    assert difference_word(found) == word


def test_a_difference_below_zero_is_none():
    with pytest.raises(ValueError, match="never below zero"):
        difference_word(-0.1)


def test_two_dye_lots_compared():
    step = compared("#3f6b8c", "#3f6b8c")
    assert step.value == 0
    assert step.how.endswith("not seen as a difference")
    assert compared("#3f6b8c", "#8c3f4b").value > 30
    assert "Sharma" in step.source
