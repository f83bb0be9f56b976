"""Knitted fabric as Munden, examinations and handbooks print it."""

import pytest

from app.craft.fabric import KS_FULL, loop_cm, stitches_per_cm2
from app.craft.relaxation import RELAXED

pytestmark = pytest.mark.published


@pytest.mark.parametrize(
    ("state", "courses", "wales", "area", "within"),
    [
        ("dry-relaxed", 5.0, 3.8, 19.0, 1e-9),
        ("wet-relaxed", 5.3, 4.1, 21.6, 0.15),
        ("fully relaxed", 5.5, 4.2, 23.1, 1e-9),
    ],
)
def test_mundens_constants(state, courses, wales, area, within):
    """Munden 1959, plain wool. The printed 21.6 is not exactly 5.3 × 4.1 = 21.73: it is printed as
    rounded by itself."""
    ours = RELAXED[state]
    assert (ours.courses, ours.wales, ours.area) == (courses, wales, area)
    assert ours.courses * ours.wales == pytest.approx(ours.area, abs=within)


def test_loop_density_of_half_a_centimetre():
    """GATE TF 2015 Q54: Kc 5.5, Kw 4.2, l 0.5 cm: 92.4 loops in a square centimetre."""
    l_cm = 0.5
    courses, wales = 5.5 / l_cm, 4.2 / l_cm
    assert stitches_per_cm2(10 * wales, 10 * courses) == pytest.approx(92.4)
    assert pytest.approx(92.4) == KS_FULL / l_cm**2


def test_the_loop_of_a_wet_relaxed_fabric_comes_back():
    """Kw 4.1 and Kc 5.3 at l 0.5 cm, within the rounding of Ks."""
    assert loop_cm(10 * 4.1 / 0.5, 10 * 5.3 / 0.5).value == pytest.approx(0.5, rel=0.005)


def test_courses_to_wales_of_a_fully_relaxed_fabric():
    """GATE TF 2009 Q40: about 1.3; 5.5/4.2."""
    relaxed = RELAXED["fully relaxed"]
    assert relaxed.courses / relaxed.wales == pytest.approx(1.3, abs=0.05)
