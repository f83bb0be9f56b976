import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.craft.twist import turns_for, wheel_turns_per_inch
from app.craft.twist_uses import (
    balance,
    draft_for_treadles,
    treadles_for_draft,
    twist_told,
    twist_uses,
    wheel_step,
)


def test_four_turns_per_inch_in_a_skein_of_450_tex():
    """Factor 1.575 × 21.21 = 33.4: knitting, and not yet socks. Angle 23°."""
    told = twist_told(4 / 2.54, 450)
    assert told.factor == pytest.approx(33.41, abs=0.005)
    assert told.angle == pytest.approx(23, abs=0.5)
    assert told.take_up == pytest.approx(0.041, abs=0.002)
    assert [one.use for one in told.uses] == ["jumpers, hats and most knitting"]


def test_a_hard_twist_suits_socks_and_a_mad_one_nothing():
    assert "socks, gloves and hard wear" in [one.use for one in twist_told(2.2, 450).uses]
    mad = twist_told(10, 450)
    assert mad.uses == ()
    assert mad.steps[-1].how == "no usual use"


def test_the_band_says_where_it_comes_from():
    step = twist_told(1.6, 450).steps[-1]
    assert step.standing == "practice"
    assert "common practice" in step.source
    for one in twist_uses():
        assert one.low < one.high
        assert one.standing == "practice"


def test_bands_as_turns_in_a_yarn():
    for one in twist_uses():
        low, high = one.turns(450)
        assert twist_told(low * 1.000001, 450).factor == pytest.approx(one.low, rel=1e-5)
        assert high == pytest.approx(turns_for(one.high, 450))


@pytest.mark.property
@given(st.floats(0, 10), st.floats(10, 3000))
def test_the_harder_the_twist_the_steeper_and_the_shorter(turns, tex):
    soft, hard = twist_told(turns, tex), twist_told(turns + 0.1, tex)
    assert hard.factor > soft.factor
    assert hard.angle > soft.angle
    assert hard.take_up > soft.take_up


@pytest.mark.parametrize(
    ("ply", "word"),
    [(4.0, "balanced"), (3.7, "balanced"), (3.5, "plied too little"), (4.5, "plied too much")],
)
def test_a_two_ply_of_six_turns_wants_four(ply, word):
    found = balance(6, ply, 2)
    assert found.balanced_per_cm == pytest.approx(4)
    assert found.share == pytest.approx(ply / 4)
    assert found.word.startswith(word)
    assert found.word in found.step.how


def test_treadles_for_a_draft_and_back():
    """14 turns per inch at 14:1: one treadle an inch."""
    turns = 14 / 2.54
    assert treadles_for_draft(turns, 14, 5.08) == pytest.approx(2)
    assert draft_for_treadles(turns, 14, 2) == pytest.approx(5.08)
    assert wheel_step(turns, 14, 5.08).value == pytest.approx(2)
    assert "(14.0 per inch)" in wheel_step(turns, 14, 5.08).how


@pytest.mark.property
@given(st.floats(0.1, 20), st.floats(1, 40), st.floats(0.5, 100))
def test_the_wheel_puts_in_what_was_asked(turns, ratio, draft):
    treadles = treadles_for_draft(turns, ratio, draft)
    assert wheel_turns_per_inch(ratio, treadles, draft / 2.54) / 2.54 == pytest.approx(turns)


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: twist_told(-1, 450), "twist cannot be less"),
        (lambda: twist_told(1, 0), "linear density in tex must be more"),
        (lambda: balance(0, 4, 2), "the singles' twist must be more"),
        (lambda: balance(6, -1, 2), "the ply's twist cannot be less"),
        (lambda: balance(6, 4, 1), "at least two plies"),
        (lambda: treadles_for_draft(1, 0, 5), "the ratio of the wheel must be more"),
        (lambda: treadles_for_draft(1, 14, 0), "the length drafted must be more"),
        (lambda: draft_for_treadles(0, 14, 2), "twist must be more"),
        (lambda: draft_for_treadles(1, 14, 0), "treadles must be more"),
    ],
)
def test_outside_the_domain(call, words):
    with pytest.raises(ValueError, match=words):
        call()
