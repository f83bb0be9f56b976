"""Counts and plied counts as standards, textbooks and examinations print them."""

import pytest

from app.craft.counts import COUNTS, folded, from_tex, plied, to_tex
from app.craft.plying import equal_singles, missing_single, resultant
from tests.published.printed import printed

pytestmark = pytest.mark.published

SYSTEMS = printed("count_systems")
PLIED = printed("plied_counts")


def of_row(row):
    return f"{row['from_number']:.6} {row['from_system']} in {row['to_system']}"


@pytest.mark.parametrize("row", SYSTEMS, ids=[row["system"] for row in SYSTEMS])
def test_every_system_has_its_constant(row):
    """Published and defined systems to the nine decimals given; a remembered definition only says
    that we mean the same system."""
    tolerance = 0.02 if row["tag"] == "memory" else 1e-8
    assert to_tex(row["system"], 1) == pytest.approx(float(row["k"]), rel=tolerance), row["source"]
    assert COUNTS[row["system"]].kind == row["kind"]
    assert (COUNTS[row["system"]].standing == "memory") == (row["tag"] == "memory")


def test_there_are_no_others():
    assert {row["system"] for row in SYSTEMS} == set(COUNTS)


@pytest.mark.parametrize("row", printed("equivalents"), ids=of_row)
def test_printed_equivalents(row):
    tex = to_tex(row["from_system"], float(row["from_number"]))
    found, within = from_tex(row["to_system"], tex), float(row["within"])
    assert found == pytest.approx(float(row["printed"]), abs=within), row["source"]


@pytest.mark.parametrize(
    ("system", "printed_k", "within"),
    [
        ("cotton", 590.54, 0.005),
        ("worsted", 885.8, 0.05),
        ("linen", 1653.5, 0.05),
        ("Yorkshire skein", 1937.7, 0.05),
        ("grains per yard", 70.86, 0.005),
        ("jute", 34.45, 0.005),
    ],
)
def test_printed_constants(system, printed_k, within):
    """Units of textile measurement, as printed, rounded."""
    assert to_tex(system, 1) == pytest.approx(printed_k, abs=within)


@pytest.mark.parametrize("row", PLIED, ids=[row["numbers"] for row in PLIED])
def test_printed_plied_counts(row):
    numbers = [float(number) for number in row["numbers"].split()]
    found = resultant(row["system"], *numbers, contraction=float(row["contraction"]))
    assert found == pytest.approx(float(row["printed"]), abs=float(row["within"])), row["source"]


@pytest.mark.parametrize("row", PLIED, ids=[row["numbers"] for row in PLIED])
def test_each_printed_plied_count_gives_its_missing_single(row):
    first, *others = (float(number) for number in row["numbers"].split())
    whole = plied(row["system"], first, *others)
    assert missing_single(row["system"], whole, *others) == pytest.approx(first)


def test_a_single_for_a_two_fold_yarn():
    """GATE TF 1992 Q3: 16 cotton two-fold, "10 % contraction": 35.2."""
    assert equal_singles("cotton", 16, 2, contraction=1.10) == pytest.approx(35.2)


def test_the_average_of_the_three_worsted_singles_is_another_number():
    """Davis, Hosiery Manufacture, ex. 30: the average of the three is 44 4/13, that is three times
    the resultant, not the resultant."""
    assert 3 * plied("worsted", 64, 48, 32) == pytest.approx(44 + 4 / 13)


def test_cotton_writes_the_singles_and_spun_silk_the_finished_yarn():
    """Taylor, Cotton Weaving and Designing, p. 239."""
    assert folded("cotton", 40, 2) == pytest.approx(20)
    assert folded("cotton", 80, 2) == pytest.approx(40)
    assert folded("cotton", 30, 2) == pytest.approx(15)
    assert folded("spun silk", 40, 2) == 40
