"""The trade tables against the rows they were copied from, each row naming its source.

Published rows exactly as printed; remembered ones only roughly, for they were never seen.
"""

import pytest

from app.craft.breeds import INCH_MM, all_rows
from app.craft.grades import grade_named, grade_of, grades
from app.craft.moisture import agreed_by
from app.craft.needles import needles
from app.craft.ranges import fibres_of, ranges
from app.craft.sizes import printed as body_rows
from tests.published.printed import printed

pytestmark = pytest.mark.published

OUNCE_G, YARD_M = 28.349523125, 0.9144


def near(text, tag="published"):
    """The printed number; a remembered one within a tenth."""
    return pytest.approx(float(text), rel=0.1 if tag == "memory" else 1e-9)


@pytest.mark.parametrize("row", printed("regain"), ids=lambda row: f"{row['fibre']} {row['rule']}")
def test_agreed_regain(row):
    agreed = agreed_by(row["rule"], row["fibre"])
    assert 100 * agreed.regain == near(row["percent"], row["tag"]), row["source"]
    assert agreed.standing == row["tag"]


@pytest.mark.parametrize("row", printed("needles"), ids=lambda row: row["mm"])
def test_needle_sizes(row):
    needle = next(one for one in needles() if one.mm == float(row["mm"]))
    assert needle.uk_old == row["uk_old"], row["source"]
    if row["us"]:
        assert needle.us == row["us"], row["source"]


def span(row, column, factor=1.0):
    low, high = row[f"{column}_low"], row[f"{column}_high"]
    return (float(low) * factor, float(high) * factor) if low and high else None


BREEDS = list(zip(printed("breeds"), all_rows(), strict=True))


@pytest.mark.parametrize(("row", "ours"), BREEDS, ids=[ours.name for _, ours in BREEDS])
def test_breeds(row, ours):
    assert (ours.name, ours.source) == (row["breed"], row["source"])
    assert ours.yield_pct == span(row, "yield_pct")
    assert ours.micron == span(row, "micron")
    assert ours.staple_mm == span(row, "staple_in", INCH_MM)
    assert (ours.standing == "memory") == (row["tag"] == "memory")


GRADES = printed("wool_grades")


@pytest.mark.parametrize("row", GRADES, ids=[row["grade"] for row in GRADES])
def test_grades_of_wool(row):
    ours = next(one for one in grades() if one.name == row["grade"])
    assert ours.standing == row["tag"]
    for column in ("micron_low", "micron_high", "most_sd"):
        if row[column]:
            assert getattr(ours, column) == near(row[column], row["tag"]), row["source"]


@pytest.mark.parametrize("row", [row for row in GRADES if row["tag"] == "published"])
def test_a_wool_at_either_limit_of_its_grade_is_of_it(row):
    for column in ("micron_low", "micron_high"):
        if row[column]:
            assert grade_of(float(row[column])).name == row["grade"]
    if row["grade"][0].isdigit():
        assert grade_named(row["grade"]).name == row["grade"]


@pytest.mark.parametrize("row", printed("fibre_microns"), ids=lambda row: row["fibre"])
def test_fineness_of_fibres(row):
    middle = (float(row["low"]) + float(row["high"])) / 2
    ours = next(one for one in fibres_of(middle) if one.what == row["fibre"])
    assert (ours.low, ours.high) == (float(row["low"]), float(row["high"])), row["source"]


@pytest.mark.parametrize("row", printed("spinning_rates"), ids=lambda row: row["what"])
def test_spinning_rates(row):
    """What was printed, turned into a rate per hour by the exact yard and ounce: to the figure."""
    ours = next(one for one in ranges("spinning_rates") if one.what == row["what"])
    unit = YARD_M if row["unit"] == "yd" else OUNCE_G
    per_hour = float(row["amount"]) * unit * 60 / float(row["minutes"])
    assert ours.low == pytest.approx(per_hour, abs=0.06)
    assert ours.low == pytest.approx(float(row["low"]), abs=0.5)
    assert ours.high == pytest.approx(float(row["high"]), abs=0.5)
    assert ours.unit == row["per_hour"]


@pytest.mark.parametrize("row", printed("wet_finishing"), ids=lambda row: row["what"])
def test_wet_finishing(row):
    ours = next(one for one in ranges("wet_finishing") if one.what == row["what"])
    change = 100 * (float(row["after"]) / float(row["before"]) - 1)
    assert (ours.low, ours.high) == (float(row["low"]), float(row["high"])), row["source"]
    assert ours.low - 0.06 <= change <= ours.high + 0.06


@pytest.mark.parametrize(
    "row", printed("body_sizes"), ids=lambda row: f"{row['group']} {row['size']} {row['measure']}"
)
def test_body_sizes(row):
    key = (row["group"], row["size"], row["measure"])
    ours = next(one for one in body_rows() if (one.group, one.size, one.measure) == key)
    assert (ours.low_cm, ours.high_cm) == (float(row["low_cm"]), float(row["high_cm"]))
    assert ours.standing == "published"


CHESTS = [row for row in printed("child_chests") if row["age"].endswith("y")]


@pytest.mark.parametrize("row", CHESTS, ids=[row["age"] for row in CHESTS])
def test_childrens_chests_differ_from_chart_to_chart_by_about_an_inch(row):
    ours = next(
        one
        for one in body_rows()
        if (one.group, one.size, one.measure) == ("child", row["age"].removesuffix("y"), "chest")
    )
    assert ours.middle_cm == pytest.approx(float(row["chest_cm"]), abs=4), row["source"]
