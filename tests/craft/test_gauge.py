import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.craft.gauge import TEN_CM_IN, counted, in_measure, measures_apart, per_10cm

COUNT = st.floats(2, 100)


def test_22_in_4_in_are_21_65_in_10_cm():
    assert per_10cm(22, "4 in") == pytest.approx(22 / 1.016)
    assert per_10cm(22, "10 cm") == 22
    assert in_measure(22, "4 in") == pytest.approx(22.352)


def test_the_two_readings_of_one_count_lie_side_by_side():
    metric, inches = measures_apart(22)
    assert (metric.what, inches.what) == ("22 in 10 cm", "22 in 4 in")
    assert metric.value / inches.value == pytest.approx(1.016)


@pytest.mark.property
@given(COUNT, st.sampled_from(sorted(TEN_CM_IN)))
def test_there_and_back(count, measure):
    assert in_measure(per_10cm(count, measure), measure) == pytest.approx(count, rel=1e-12)


def test_a_count_over_a_swatch():
    """33 stitches over 150 mm: 22 in 10 cm; half a stitch is 0.29 of 33, a mm 1 of 150."""
    gauge = counted(33, 150, "st/10 cm", "swatch 3")
    assert gauge.value == pytest.approx(22)
    assert gauge.causes["half a stitch or row, swatch 3"] == pytest.approx(22 * 0.288675 / 33)
    assert gauge.causes["the tape, swatch 3"] == pytest.approx(-22 / 150)


@pytest.mark.property
@given(st.floats(5, 60), st.floats(30, 300))
def test_a_wider_swatch_is_surer(gauge, width):
    narrow = counted(gauge * width / 100, width, "st/10 cm", "a")
    wide = counted(gauge * width / 50, 2 * width, "st/10 cm", "a")
    assert wide.value == pytest.approx(narrow.value)
    assert wide.u < narrow.u


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: per_10cm(22, "inch"), "10 cm or in 4 in, not in 'inch'"),
        (lambda: per_10cm(0, "4 in"), "a gauge must be more than zero"),
        (lambda: in_measure(22, "cm"), "10 cm or in 4 in"),
        (lambda: counted(0, 100, "st/10 cm", "a"), "a count must be more than zero"),
        (lambda: counted(22, 0, "st/10 cm", "a"), "the width or length counted must be more"),
    ],
)
def test_outside_the_domain(call, words):
    with pytest.raises(ValueError, match=words):
        call()
