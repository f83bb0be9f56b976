import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.craft.fabric import loop_cm, yarn_in
from app.craft.figure import Figure
from app.craft.patterns import (
    float_length,
    gauge_until_measured,
    known_or_unsure,
    pattern_of,
    pattern_step,
    patterns,
    yarn_in_pattern,
)

PATTERN = st.sampled_from(patterns())
LOOP = Figure(1.8, "cm", {"loop": 0.126})


def test_a_purl_takes_what_a_knit_stitch_takes():
    for name in ("stocking stitch", "garter stitch", "1×1 rib", "moss stitch"):
        assert yarn_in_pattern(pattern_of(name), 1000, LOOP).value == pytest.approx(18)


def test_no_constant_is_invented_for_garter_and_rib():
    """They want a swatch, and until then keep the gauge of stocking stitch with a wide error."""
    for name in ("garter stitch", "moss stitch", "1×1 rib", "2×2 rib"):
        pattern = pattern_of(name)
        assert pattern.own_gauge
        assert pattern.standing == "assumed"
        stitches, rows = gauge_until_measured(pattern, 22, 30)
        assert (stitches.value, rows.value) == (22, 30)
        area = stitches.times(rows, "st")
        assert area.u / area.value == pytest.approx(pattern.area_u)
        assert pattern.area_u >= 0.3


def test_stocking_stitch_is_as_sure_as_its_gauge():
    plain = pattern_of("Stocking  Stitch")
    assert not plain.own_gauge
    assert gauge_until_measured(plain, 22, 30)[0].u == 0
    assert yarn_in_pattern(plain, 1000, LOOP).u == pytest.approx(1.26)


def test_crossings_take_a_little_more():
    found = yarn_in_pattern(pattern_of("cables"), 1000, LOOP)
    assert found.value == pytest.approx(18.9)
    assert found.causes["extras of cables"] == pytest.approx(0.9)


def test_a_float_is_as_wide_as_its_stitches():
    """3 stitches at 22 in 10 cm: 1.364 cm; and about a quarter of the loop, w·l being near 4."""
    assert float_length(22, 3) == pytest.approx(0.013636, abs=5e-7)
    assert 100 * float_length(22, 1) / loop_cm(22, 30).value == pytest.approx(0.25, abs=0.02)


def test_its_working():
    cables = pattern_step(pattern_of("cables"), 1000, LOOP)
    assert cables.how == "1000 × 1.8 cm ÷ 100 × 1.05"
    assert (cables.unit, cables.standing) == ("m", "practice")
    plain = pattern_step(pattern_of("stocking stitch"), 1000, LOOP)
    assert plain.how == "1000 × 1.8 cm ÷ 100"


@pytest.mark.property
@given(PATTERN, st.integers(0, 100_000))
def test_a_pattern_never_takes_less_than_its_stitches(pattern, stitches):
    assert yarn_in_pattern(pattern, stitches, LOOP).value >= yarn_in(stitches, LOOP).value


def test_every_pattern_says_where_its_numbers_come_from():
    assert len({one.name for one in patterns()}) == len(patterns())
    for one in patterns():
        assert one.source
        assert one.note
        assert (one.multiple is None) == (one.plus is None)
        assert one.own_gauge == (one.area_u > 0)
        assert one.standing in {"derived", "practice", "assumed"}


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: pattern_of("tweed stitch"), "no stitch pattern is called 'tweed stitch'"),
        (lambda: gauge_until_measured(patterns()[0], 0, 30), "stitches in 10 cm must be more"),
        (lambda: gauge_until_measured(patterns()[0], 22, 0), "rows in 10 cm must be more"),
        (lambda: float_length(0, 3), "stitches in 10 cm must be more"),
        (lambda: float_length(22, -1), "the stitches passed cannot be less"),
    ],
)
def test_outside_the_domain(call, words):
    with pytest.raises(ValueError, match=words):
        call()


def test_a_pattern_no_table_names_is_unsure_by_three_tenths_of_its_area():
    owls = known_or_unsure("Owls in a row")
    assert (owls.name, owls.own_gauge, owls.area_u, owls.extra) == ("Owls in a row", True, 0.3, 0)
    assert known_or_unsure(" 2×2 RIB") == pattern_of("2×2 rib")
