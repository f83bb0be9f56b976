"""What goes wrong quietly in this trade: each trap must not be walked into."""

from math import sqrt

import pytest

from app.craft.counts import plied, tex_of, to_tex
from app.craft.fabric import loop_cm, yarn_in
from app.craft.figure import Figure, UnitMismatch
from app.craft.gauge import per_10cm
from app.craft.moisture import content_from_regain, dry_mass, invoice_mass, regain_from_content
from app.craft.needles import us_size
from app.craft.thickness import wraps_from_tex
from app.craft.twist import contraction_from, take_up_of
from app.craft.typed import Unclear, length_mm, mass_mg
from tests.published.printed import printed

pytestmark = pytest.mark.published


def test_the_worsted_constant_is_not_885_5():
    """One printed table gives 885.5 and 885.8 side by side; only the second is right."""
    assert to_tex("worsted", 1) == pytest.approx(885.811871, abs=1e-6)
    assert abs(to_tex("worsted", 1) - 885.5) > 0.3


def test_twenty_fifteen_and_twelve_make_five_not_ten():
    """A printed answer finds 1/N = 0.2 and then wrongly doubles it to 10."""
    assert plied("cotton", 20, 15, 12) == pytest.approx(5)


def test_content_is_not_regain():
    """4 % of the whole is 4.17 % of the dry; GATE TF 2010 Q38 printed the other answer."""
    assert regain_from_content(0.04) == pytest.approx(0.0416667, abs=5e-8)
    assert content_from_regain(0.04) < 0.04
    assert invoice_mass(100, 0.04, 0.085) != pytest.approx(dry_mass(100, 0.04) * 1.085, rel=1e-4)


def test_2_25_mm_is_a_us_1_not_a_0():
    """Craft Yarn Council guide to yarn weights; one printed table has 0."""
    assert us_size("1") == (2.25,)
    assert 2.25 not in us_size("0")


def test_a_us_2_names_two_needles():
    assert us_size("2") == (2.75, 3.0)


def test_the_weavers_diameters_are_not_wraps():
    """Ashenhurst 0.9·√(yd/lb) for cotton 8/2: 52; Taylor, p. 458, √ less 5 % for cotton 32: 156."""
    assert 0.9 * sqrt(3360) == pytest.approx(52, abs=0.5)
    assert 0.95 * sqrt(32 * 840) == pytest.approx(156, abs=0.5)
    assert wraps_from_tex(to_tex("cotton", 4)) < 52 / 2
    assert wraps_from_tex(to_tex("cotton", 32)) < 156 / 2


def test_printed_yards_per_pound_are_no_better_than_a_percent():
    rounded = [row for row in printed("equivalents") if row["tolerance"].startswith("1 %")]
    off = [
        abs(tex_of(453.59237, 0.9144 * float(row["printed"])) / float(row["from_number"]) - 1)
        for row in rounded
    ]
    assert max(off) < 0.01
    assert max(off) > 0.005


def test_a_printed_contraction_is_not_take_up():
    """GATE TF 1992 Q3 divides by what is before, not after."""
    assert take_up_of(1.10) == pytest.approx(0.0909, abs=5e-5)
    assert contraction_from(0.10) == pytest.approx(1.1111, abs=5e-5)


def test_1_200_m_may_be_a_thousand_and_1_2_may_not():
    with pytest.raises(Unclear, match=r"can be read as 1200 or as 1\.2"):
        length_mm("1,200 m", decimal=".")
    with pytest.raises(Unclear, match="can be read as 1200 or as 1,2"):
        length_mm("1.200 m", decimal=",")
    assert length_mm("1,2 m", decimal=".") == length_mm("1.2 m", decimal=",") == 1200


def test_a_fluid_ounce_is_no_weight_and_a_yard_no_inch():
    with pytest.raises(Unclear, match="a volume, not a weight"):
        mass_mg("4 fl oz")
    with pytest.raises(Unclear, match="measures a length"):
        mass_mg("250 yd")
    with pytest.raises(Unclear, match="measures a weight"):
        length_mm("4 oz")
    assert length_mm("1 yd") == pytest.approx(36 * length_mm("1 in"), abs=18)


def test_no_rows_take_no_yarn():
    assert yarn_in(0, loop_cm(22, 30)) == Figure(
        0, "m", {"loop length from the gauge": pytest.approx(0)}
    )


def test_a_gauge_in_4_in_taken_for_10_cm_is_1_6_percent_off():
    assert per_10cm(22, "4 in") / per_10cm(22, "10 cm") == pytest.approx(1 / 1.016)


def test_metres_and_grams_never_add():
    with pytest.raises(UnitMismatch):
        Figure(213, "m") + Figure(96, "g")
