"""Knitted fabric as Munden, examinations and handbooks print it."""

import pytest

from app.craft.fabric import KS_DRY, KS_FULL, KS_WET, loop_cm, stitches_per_cm2

pytestmark = pytest.mark.published


@pytest.mark.parametrize(
    ("per_course", "per_wale", "ks", "within"),
    [(5.0, 3.8, KS_DRY, 1e-9), (5.3, 4.1, KS_WET, 0.15), (5.5, 4.2, KS_FULL, 1e-9)],
)
def test_the_area_constant_is_the_product_of_the_two(per_course, per_wale, ks, within):
    """Munden 1959: dry, wet and fully relaxed plain wool. The printed 21.6 is not exactly
    5.3 × 4.1 = 21.73: it is printed as rounded by itself."""
    assert per_course * per_wale == pytest.approx(ks, abs=within)


def test_loop_density_of_half_a_centimetre():
    """GATE TF 2015 Q54: Kc 5.5, Kw 4.2, l 0.5 cm: 92.4 loops in a square centimetre."""
    l_cm = 0.5
    courses, wales = 5.5 / l_cm, 4.2 / l_cm
    assert stitches_per_cm2(10 * wales, 10 * courses) == pytest.approx(92.4)
    assert pytest.approx(92.4) == KS_FULL / l_cm**2


def test_the_loop_of_a_wet_relaxed_fabric_comes_back():
    """Kw 4.1 and Kc 5.3 at l 0.5 cm, within the rounding of Ks."""
    assert loop_cm(10 * 4.1 / 0.5, 10 * 5.3 / 0.5).value == pytest.approx(0.5, rel=0.005)
