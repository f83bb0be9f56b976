"""The three ways to follow a pattern at another gauge: metres, widths and counts."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.craft.fabric import loop_cm
from app.craft.pattern_gauge import (
    CASES,
    Counts,
    Printed,
    Recounted,
    recounted,
    width_factor,
    yarn_factor,
)

PATTERN, OWN = Counts(22, 30), Counts(20, 28)
gauges = st.builds(Counts, st.floats(8, 45), st.floats(10, 65))


@pytest.mark.golden
@pytest.mark.parametrize(
    ("case", "factor"), [("stitches", 1.013), ("stitches and rows", 1.086), ("size", 0.921)]
)
def test_from_22_by_30_to_20_by_28(case, factor):
    assert yarn_factor(case, PATTERN, OWN) == pytest.approx(factor, abs=0.0005)


@pytest.mark.golden
@pytest.mark.parametrize(
    ("case", "piece"),
    [
        ("stitches", Recounted(229, 229, 112)),
        ("stitches and rows", Recounted(229, 229, 120)),
        ("size", Recounted(208, 208, 112)),
    ],
)
def test_a_tube_of_229_stitches_and_40_cm(case, piece):
    """40 cm are 120 rows at 30, 112 at 28; 229 stitches at 22 are 208 at 20."""
    assert recounted(case, Printed(229, 229, 120, 40), PATTERN, OWN) == piece


@pytest.mark.golden
def test_a_sleeve_counted_anew_keeps_its_shaping_in_pairs():
    """48 × 20/22 = 43.6; the 32 increases become 29.1, in pairs 30."""
    found = recounted("size", Printed(48, 80, None, 45), PATTERN, OWN)
    assert found == Recounted(44, 74, 126)
    assert (found.widest, found.narrowest) == (74, 44)


@pytest.mark.parametrize("case", CASES)
def test_rows_and_length_stand_in_for_each_other(case):
    by_rows = recounted(case, Printed(100, None, rows=120), PATTERN, OWN)
    by_length = recounted(case, Printed(100, None, length_cm=40), PATTERN, OWN)
    assert by_rows == by_length
    assert by_rows.rows == (120 if case == "stitches and rows" else 112)


@pytest.mark.parametrize("case", CASES)
@pytest.mark.parametrize("piece", [Printed(), Printed(100), Printed(rows=90), Printed(length_cm=9)])
def test_what_the_pattern_does_not_say_is_not_made_up(case, piece):
    assert recounted(case, piece, PATTERN, OWN) is None


def test_a_piece_may_begin_with_no_stitch_and_may_narrow():
    assert recounted("stitches", Printed(0, 20, 40), PATTERN, PATTERN) == Recounted(0, 20, 40)
    narrow = recounted("size", Printed(268, 80, 66), PATTERN, PATTERN)
    assert narrow == Recounted(268, 80, 66)
    assert recounted("size", Printed(11, 0, 10), PATTERN, OWN).narrowest == 0
    only_widest = recounted("stitches", Printed(None, 90, 10), PATTERN, OWN)
    assert only_widest == Recounted(90, 90, 9)


def test_widths():
    assert width_factor("stitches", PATTERN, OWN) == pytest.approx(1.1)
    assert width_factor("size", PATTERN, OWN) == 1
    assert PATTERN.across_cm(229) == pytest.approx(104.09, abs=0.01)
    assert OWN.along_cm(112) == 40


@pytest.mark.parametrize("nothing", [Counts(0, 30), Counts(22, 0), Counts(-1, 30)])
def test_a_gauge_is_above_zero(nothing):
    with pytest.raises(ValueError, match="10 cm"):
        yarn_factor("size", PATTERN, nothing)


@pytest.mark.property
@given(gauges)
def test_nothing_changes_at_the_printed_gauge(gauge):
    for case in CASES:
        assert yarn_factor(case, gauge, gauge) == pytest.approx(1)
        assert width_factor(case, gauge, gauge) == 1
        piece = Printed(80, 120, 90, gauge.along_cm(90))
        assert recounted(case, piece, gauge, gauge) == Recounted(80, 120, 90)


@pytest.mark.property
@given(gauges, gauges, st.integers(20, 400), st.integers(20, 400))
def test_the_factor_is_what_the_stitches_themselves_say(pattern, own, stitches, rows):
    """Stitches × yarn in a stitch by Munden, at both gauges, from unrounded counts."""
    length = pattern.along_cm(rows)
    counts = {
        "stitches": stitches * length * own.rows / 10,
        "stitches and rows": stitches * rows,
        "size": pattern.across_cm(stitches) * own.stitches / 10 * length * own.rows / 10,
    }
    loops = [loop_cm(one.stitches, one.rows).value for one in (pattern, own)]
    for case, own_count in counts.items():
        share = own_count * loops[1] / (stitches * rows * loops[0])
        assert yarn_factor(case, pattern, own) == pytest.approx(share)


@pytest.mark.property
@given(gauges, gauges)
def test_there_and_back_again(pattern, own):
    for case in CASES:
        there, back = yarn_factor(case, pattern, own), yarn_factor(case, own, pattern)
        assert there * back == pytest.approx(1)
    kept = yarn_factor("size", pattern, own) * yarn_factor("stitches and rows", pattern, own)
    assert kept == pytest.approx(1)


@pytest.mark.property
@given(gauges, gauges, st.integers(1, 500), st.integers(1, 60))
def test_more_stitches_are_never_narrower(pattern, own, stitches, more):
    for case in CASES:
        one, two = (
            recounted(case, Printed(count, None, 50), pattern, own)
            for count in (stitches, stitches + more)
        )
        assert own.across_cm(one.widest) <= own.across_cm(two.widest)


@pytest.mark.property
@given(gauges, gauges, st.integers(20, 500))
def test_the_size_is_kept_to_half_a_stitch(pattern, own, stitches):
    found = recounted("size", Printed(stitches, None, 50), pattern, own)
    off = own.across_cm(found.stitches) - pattern.across_cm(stitches)
    assert abs(off) <= own.across_cm(0.5) * (1 + 1e-9)
