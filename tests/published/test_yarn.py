"""Thickness, class and twist of yarn as charts, examinations and textbooks print them."""

import pytest

from app.craft.counts import to_tex
from app.craft.gauge import per_10cm
from app.craft.thickness import twist_diameter_mm, wraps_from_tex
from app.craft.twist import english_multiplier, turns_for, twist_angle
from app.craft.yarn_class import by_gauge, by_grist
from tests.published.printed import printed

pytestmark = pytest.mark.published

CHARTS = printed("handspun_charts")
CLOSED = [row for row in CHARTS if row["wraps_low"] and row["yd_lb_high"]]


@pytest.mark.parametrize("row", CLOSED, ids=lambda row: f"{row['wraps_low']} {row['source'][:12]}")
def test_wraps_from_grist_fit_both_printed_charts(row):
    """The charts round wraps to whole numbers and differ by a class: 10 %, as the rule says."""
    finest = wraps_from_tex(to_tex("yd/lb", float(row["yd_lb_high"])))
    coarsest = wraps_from_tex(to_tex("yd/lb", float(row["yd_lb_low"])))
    assert coarsest <= float(row["wraps_high"]) * 1.1, row["source"]
    assert finest >= float(row["wraps_low"]) * 0.9, row["source"]


FIRST = [row for row in CHARTS if row["source"] == "a printed handspun chart"]


@pytest.mark.parametrize("number", range(len(FIRST)))
def test_the_classes_of_the_handspun_chart_by_grist(number):
    for end in ("yd_lb_low", "yd_lb_high"):
        if FIRST[number][end]:
            found = by_grist(to_tex("yd/lb", float(FIRST[number][end])))
            assert number in [one.number for one in found]


@pytest.mark.parametrize("row", printed("class_gauges"), ids=lambda row: row["name"])
def test_the_classes_by_gauge(row):
    for end in ("stitches_low", "stitches_high"):
        found = by_gauge(per_10cm(float(row[end]), "4 in"))
        assert int(row["number"]) in [one.number for one in found], row["source"]


@pytest.mark.parametrize(
    ("tex", "printed_cm", "within"), [(30, 0.01958, 0.002), (15, 0.01394, 0.01)]
)
def test_diameters_of_cotton_yarns(tex, printed_cm, within):
    """GATE TF 2008 Q71: 4.44e-3·√(tex/1.54) cm, that is fibre of 1.54 g/cm³ filling 0.646 of the
    yarn. The answer prints 0.01394 where its own rule gives 0.01386: within 1 %."""
    volume = 1 / (1.54 * 0.646)
    assert twist_diameter_mm(tex, volume) / 10 == pytest.approx(printed_cm, rel=within)


def test_twist_from_a_factor():
    """GATE TF 2014 Q19: 25 tex, factor 30: 6 turns per cm."""
    assert turns_for(30, 25) == pytest.approx(6)


def test_the_factor_of_cotton_spinners():
    """Printed as 9.57."""
    assert 1 / english_multiplier(1) == pytest.approx(9.57, abs=0.005)


def test_a_surface_angle():
    """GATE TF 2022 Q47: 700 kg/m³, factor 6000 per m·√tex: 39°."""
    assert twist_angle(turns_for(60, 100), 100, 1 / 0.7) == pytest.approx(39, abs=0.5)
