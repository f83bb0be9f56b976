from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.craft.counts import to_tex
from app.craft.thickness import (
    tex_expected,
    tex_from_wraps,
    twist_diameter_mm,
    wraps_diameter_mm,
    wraps_expected,
    wraps_from_tex,
)


def test_wraps_of_the_handbook_skein():
    """450.7 tex is 1100.6 yd/lb: 0.376 × 33.175."""
    assert wraps_from_tex(450.7) == pytest.approx(12.47, abs=0.005)
    assert wraps_diameter_mm(12.7) == pytest.approx(2.0)


@pytest.mark.property
@given(st.floats(10, 5000))
def test_there_and_back(tex):
    assert tex_from_wraps(wraps_from_tex(tex)) == pytest.approx(tex)


def test_what_to_expect_and_how_surely():
    """450.7 tex: 12.47 wraps ± 10 %; back, the square makes it 20 %."""
    wraps = wraps_expected(450.7)
    assert wraps.value == wraps_from_tex(450.7)
    assert wraps.u == pytest.approx(1.247, abs=0.0005)
    tex = tex_expected(wraps.value)
    assert tex.value == pytest.approx(450.7)
    assert tex.u == pytest.approx(0.2 * 450.7)


@pytest.mark.property
@given(st.floats(1, 60), st.floats(0.01, 10))
def test_more_wraps_are_a_finer_yarn(wraps, more):
    assert tex_from_wraps(wraps + more) < tex_from_wraps(wraps)


@pytest.mark.published
@pytest.mark.parametrize(
    ("yards_per_pound", "wraps"), [(2400, 18), (1900, 16), (1200, 13), (900, 11.5), (600, 9.5)]
)
def test_wraps_fit_the_borders_of_a_printed_handspun_chart(yards_per_pound, wraps):
    assert wraps_from_tex(to_tex("yd/lb", yards_per_pound)) == pytest.approx(wraps, rel=0.05)


@pytest.mark.published
def test_wraps_are_not_the_weavers_diameters():
    """Ashenhurst, 0.9·√(yd/lb) for cotton 8/2 at 3360 yd/lb: a compressed yarn, more than twice
    the wraps of handspinners."""
    weavers = 0.9 * sqrt(3360)
    assert weavers == pytest.approx(52.17, abs=0.005)
    assert weavers > 2 * wraps_from_tex(to_tex("yd/lb", 3360))


def test_twisted_yarn_is_thinner_than_wrapped_yarn():
    """450 tex: 0.0356825 × √(450 × 1.27) = 0.853 mm, against 2.04 mm wrapped."""
    assert twist_diameter_mm(450) == pytest.approx(0.853, abs=0.0005)
    assert wraps_diameter_mm(wraps_from_tex(450)) > 2 * twist_diameter_mm(450)


@pytest.mark.property
@given(st.floats(1, 5000), st.floats(0.7, 3))
def test_the_twist_diameter_is_that_of_a_cylinder_of_the_mass(tex, volume):
    """π/4·d² times a metre is the volume of its mass."""
    d_cm = twist_diameter_mm(tex, volume) / 10
    assert 3.14159265 / 4 * d_cm**2 * 100 == pytest.approx(tex / 1000 * volume, rel=1e-5)


@pytest.mark.parametrize(
    "call",
    [
        lambda: wraps_from_tex(0),
        lambda: tex_from_wraps(-1),
        lambda: wraps_diameter_mm(0),
        lambda: twist_diameter_mm(450, 0),
        lambda: twist_diameter_mm(0),
    ],
)
def test_outside_the_domain(call):
    with pytest.raises(ValueError, match="must be more than zero"):
        call()
