from math import sqrt

import pytest

from app.craft.cloth import fullness, square_metre
from app.craft.figure import Figure
from app.craft.loop_ways import by_gauge, by_weight

TEX = Figure(450, "tex", {"grist": 9.0})


def test_a_square_metre_of_22_by_30():
    """66,000 stitches of 1.8091 cm: 1194 m, at 450 tex 537.3 g, 8.14 mg a stitch."""
    cloth = square_metre(22, 30, by_gauge(22, 30).loop, TEX)
    assert cloth.m_per_m2.value == pytest.approx(1194.0, abs=0.05)
    assert cloth.g_per_m2.value == pytest.approx(537.3, abs=0.05)
    assert cloth.g_per_stitch.value == pytest.approx(537.3 / 66_000, rel=1e-4)
    assert cloth.cm_per_stitch.value == pytest.approx(1.8091, abs=5e-5)


def test_the_working_has_a_unit_to_every_figure():
    steps = square_metre(22, 30, by_gauge(22, 30).loop, TEX).steps
    assert [step.unit for step in steps] == ["stitches", "m", "g", "mg"]
    assert steps[0].how == "22 × 30 × 100"
    assert steps[1].how == "66000 × 1.809 cm ÷ 100"
    assert all(step.u for step in steps[1:])


def test_with_a_weighed_swatch_the_grist_cancels_in_grams():
    cloth = square_metre(22, 30, by_weight(10, 1228, TEX).loop, TEX)
    assert cloth.g_per_m2.causes["grist"] == pytest.approx(0, abs=1e-9)
    assert cloth.m_per_m2.causes["grist"] != 0
    assert cloth.g_per_stitch.value == pytest.approx(10 / 1228)


def test_firmness_by_weight_alone():
    full = fullness(400, 1.6)
    assert full.by_weight == pytest.approx(12.5)
    assert (full.by_wraps, full.word, full.loft) == (None, "ordinary", "")
    assert full.steps[0].how == "√(400 tex) ÷ 1.6 cm: ordinary"


def test_wraps_that_agree_and_wraps_that_do_not():
    """12 wraps: 2.54/12/(0.00959 × 1.6) = 13.8, within 1.5 of √400/1.6; 9 wraps: 18.4."""
    usual = fullness(400, 1.6, 12)
    assert usual.by_wraps == pytest.approx(13.8, abs=0.05)
    assert usual.loft == ""
    lofty = fullness(400, 1.6, 9)
    assert lofty.loft == "loftier"
    assert lofty.steps[1].how.endswith("the yarn is loftier than usual")
    assert fullness(400, 1.6, 20).loft == "denser"


def test_outside_the_domain():
    with pytest.raises(ValueError, match="rows in 10 cm must be more"):
        square_metre(22, 0, Figure(1.8, "cm"), TEX)
    with pytest.raises(ValueError, match="loop length in cm must be more"):
        fullness(sqrt(2), 0)
