import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.craft.needles import (
    nearest_needle,
    needles,
    old_british_size,
    predict_gauge,
    us_size,
)


def test_a_gauge_before_any_swatch():
    """h 0.95, R 1.30: D 3.75 and d 1.5 mm give l 1.567 cm and 26.0 stitches; D 3.25 gives 28.8."""
    wraps = 25.4 / 1.5
    ahead = predict_gauge(3.75, wraps, hand=0.95, rows_per_stitch=1.30)
    assert ahead.loop.value == pytest.approx(1.567, abs=0.0005)
    assert ahead.stitches.value == pytest.approx(26.0, abs=0.05)
    finer = predict_gauge(3.25, wraps, hand=0.95, rows_per_stitch=1.30)
    assert finer.stitches.value == pytest.approx(28.8, abs=0.05)


def test_the_usual_hand_is_ten_percent_unsure():
    ahead = predict_gauge(4, 12)
    assert ahead.loop.u == pytest.approx(0.10 * ahead.loop.value)
    assert ahead.stitches.chief_cause == "the knitter's hand"
    assert ahead.rows.value / ahead.stitches.value == pytest.approx(1.36)


def test_stitches_and_loop_come_from_one_hand():
    """For a fixed area the yarn is stitches × rows × loop: Ks/l in the end, so u as of the loop."""
    ahead = predict_gauge(4, 12)
    area = ahead.stitches.times(ahead.rows, "st").times(ahead.loop, "cm")
    assert area.u / area.value == pytest.approx(0.10, rel=1e-6)


@pytest.mark.property
@given(st.floats(1, 20), st.floats(2, 40), st.floats(0.7, 1.4), st.floats(1, 2))
def test_the_gauge_keeps_mundens_law(needle, wraps, hand, ratio):
    ahead = predict_gauge(needle, wraps, hand, ratio)
    per_cm2 = ahead.stitches.value * ahead.rows.value / 100
    assert per_cm2 * ahead.loop.value**2 == pytest.approx(21.6)


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        ((0, 12), "the needle in mm must be more than zero"),
        ((4, 0), "wraps per inch must be more than zero"),
        ((4, 12, 0), "the knitter's hand must be more than zero"),
        ((4, 12, 1, 0), "rows/stitch must be more than zero"),
    ],
)
def test_outside_the_domain(arguments, words):
    with pytest.raises(ValueError, match=words):
        predict_gauge(*arguments)


@pytest.mark.published
@pytest.mark.parametrize(
    ("mm", "us", "uk"),
    [(2.0, "0", "14"), (3.25, "3", "10"), (4.0, "6", "8"), (5.0, "8", "6"), (8.0, "11", "0")],
)
def test_printed_sizes(mm, us, uk):
    """A printed needle table, 2015, and a printed table of US sizes."""
    assert us_size(us) == (mm,)
    assert old_british_size(uk) == (mm,)


@pytest.mark.published
def test_2_25_mm_is_a_us_1_not_a_0():
    """Craft Yarn Council guide to yarn weights; one printed table has 0."""
    assert us_size("1") == (2.25,)
    assert 2.25 not in us_size("0")


def test_a_us_2_is_sold_in_two_thicknesses():
    assert us_size("2") == (2.75, 3.0)


def test_numbers_nobody_uses():
    assert us_size("") == ()
    assert us_size("99") == ()
    assert old_british_size("") == ()


def test_the_nearest_size():
    assert nearest_needle(3.9).mm == 4.0
    assert nearest_needle(4.25).mm == 4.0
    with pytest.raises(ValueError, match="the needle in mm must be more than zero"):
        nearest_needle(0)


def test_sizes_rise_and_have_sources():
    sizes = [needle.mm for needle in needles()]
    assert sizes == sorted(set(sizes))
    assert all(needle.source for needle in needles())
