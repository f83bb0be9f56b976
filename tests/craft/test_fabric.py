from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.craft.fabric import (
    firmness,
    firmness_by_wraps,
    firmness_word,
    loft_word,
    loop_cm,
    metres_per_m2,
    row_per_width,
    stitches_per_cm2,
    yarn_in,
)
from app.craft.figure import Figure
from app.craft.thickness import wraps_from_tex

GAUGE = st.floats(5, 60)


def test_a_washed_gauge_of_22_by_30():
    """S = 6.6/cm², l = √(21.6/6.6); a square metre holds 66,000 stitches of it."""
    loop = loop_cm(22, 30, washed=True)
    assert loop.value == pytest.approx(1.8091, abs=5e-5)
    assert loop.causes == {"loop length from the gauge": pytest.approx(0.07 * 1.8091, abs=1e-5)}
    assert metres_per_m2(22, 30, loop).value == pytest.approx(1194.0, abs=0.05)
    assert row_per_width(22, loop).value == pytest.approx(4.0, abs=0.05)


def test_a_gauge_taken_before_washing_has_shorter_loops():
    """Ks 19.0 in place of 21.6: 6.2 % less yarn for the same count."""
    dry, wet = loop_cm(22, 30, washed=False), loop_cm(22, 30, washed=True)
    assert dry.value / wet.value == pytest.approx(sqrt(19.0 / 21.6))
    assert dry.value == pytest.approx(1.6967, abs=5e-5)


def test_a_tube_and_a_sleeve():
    """229 × 120 stitches take 497.1 m, 8640 stitches 156.3 m at 22 × 30, washed."""
    loop = loop_cm(22, 30)
    assert yarn_in(229 * 120, loop).value == pytest.approx(497.1, abs=0.05)
    assert yarn_in(8640, loop).value == pytest.approx(156.3, abs=0.05)


def test_a_gauge_per_4_in_taken_for_10_cm_is_1_6_percent_off():
    """The silent trap: 4 in is 10.16 cm."""
    right = loop_cm(22 / 1.016, 30 / 1.016).value
    assert right / loop_cm(22, 30).value == pytest.approx(1.016)


@pytest.mark.property
@given(GAUGE, GAUGE, st.booleans())
def test_the_same_area_by_another_road(stitches, rows, washed):
    """100·√(Ks·S) metres in a square metre, without going through the loop."""
    ks = 21.6 if washed else 19.0
    metres = metres_per_m2(stitches, rows, loop_cm(stitches, rows, washed)).value
    assert metres == pytest.approx(100 * sqrt(ks * stitches_per_cm2(stitches, rows)))


def test_no_stitches_take_no_yarn():
    assert yarn_in(0, loop_cm(22, 30)).value == 0


def test_firmness_by_hand():
    """√400 over 1.6 cm."""
    assert firmness(400, 1.6) == pytest.approx(12.5)


@pytest.mark.property
@given(st.floats(20, 5000), st.floats(0.3, 6))
def test_both_firmnesses_agree_for_yarn_of_ordinary_density(tex, loop):
    assert firmness_by_wraps(wraps_from_tex(tex), loop) == pytest.approx(firmness(tex, loop))


def test_firmness_by_wraps_by_hand():
    """10 wraps per inch: 0.254 cm over 0.00959 × 1.6."""
    assert firmness_by_wraps(10, 1.6) == pytest.approx(0.254 / (0.00959 * 1.6), rel=3e-4)


@pytest.mark.parametrize(
    ("k", "word"),
    [
        (7.99, "open"),
        (8.0, "airy"),
        (9.5, "airy"),
        (9.51, "ordinary"),
        (12.5, "ordinary"),
        (14.0, "close"),
        (14.01, "firm"),
    ],
)
def test_bands_of_firmness(k, word):
    assert firmness_word(k) == word


def test_a_yarn_loftier_or_denser_than_usual_is_named():
    assert loft_word(11.0, 12.5) == ""
    assert loft_word(11.0, 12.6) == "loftier"
    assert loft_word(11.0, 9.4) == "denser"


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: loop_cm(0, 30), "stitches in 10 cm must be more than zero"),
        (lambda: loop_cm(22, -30), "rows in 10 cm must be more than zero"),
        (lambda: firmness(0, 1.6), "linear density in tex must be more than zero"),
        (lambda: firmness(400, 0), "loop length in cm must be more than zero"),
        (lambda: firmness_by_wraps(0, 1.6), "wraps per inch must be more than zero"),
        (lambda: yarn_in(-1, Figure(1.8, "cm")), "the number of stitches cannot be less"),
        (lambda: row_per_width(0, Figure(1.8, "cm")), "stitches in 10 cm must be more"),
    ],
)
def test_outside_the_domain(call, words):
    with pytest.raises(ValueError, match=words):
        call()
