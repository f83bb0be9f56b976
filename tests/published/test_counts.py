"""Counts and plied counts as standards, textbooks and examinations print them."""

import pytest

from app.craft.counts import folded, from_tex, plied, to_tex

pytestmark = pytest.mark.published


@pytest.mark.parametrize(
    ("given", "system", "printed", "within", "source"),
    [
        (("tex", 20), "cotton", 29.5, 0.03, "GATE TF 1992 Q2"),
        (("tex", 20), "denier", 180, 1e-9, "GATE TF 1992 Q2"),
        (("tex", 20), "metric", 50, 1e-9, "GATE TF 1992 Q2"),
        (("cotton", 20), "worsted", 30, 1e-9, "Brooks, Cotton Manufacturing, p. 91"),
        (("cotton", 20), "linen", 56, 1e-9, "Brooks, Cotton Manufacturing, p. 91"),
        (("cotton", 20), "French cotton", 16.93, 0.005, "Brooks, Cotton Manufacturing, p. 91"),
        (("French cotton", 1), "cotton", 1.181, 0.0005, "Brooks, Cotton Manufacturing"),
        (("cotton", 1), "yd/lb", 840, 1e-9, "Brooks, Cotton Manufacturing"),
        (("cotton", 4), "yd/lb", 3360, 1e-9, "a printed weaver's table: cotton 8/2"),
        (("grains per yard", 25 / 120), "cotton", 40, 1e-9, "Brooks: a lea of 25 grains"),
    ],
)
def test_printed_equivalents(given, system, printed, within, source):
    assert from_tex(system, to_tex(*given)) == pytest.approx(printed, abs=within), source


@pytest.mark.parametrize(
    ("tex", "printed"),
    [
        (550, 900),
        (735, 675),
        (1100, 450),
        (1200, 413),
        (2000, 250),
        (2200, 225),
        (2400, 207),
        (4400, 113),
    ],
)
def test_printed_yields_hold_to_one_percent_only(tex, printed):
    """A printed table of tex and yd/lb is rounded: agreement within 1 %, not better."""
    assert from_tex("yd/lb", tex) == pytest.approx(printed, rel=0.01)


@pytest.mark.parametrize(
    ("system", "printed", "within"),
    [
        ("cotton", 590.54, 0.005),
        ("worsted", 885.8, 0.05),
        ("linen", 1653.5, 0.05),
        ("Yorkshire skein", 1937.7, 0.05),
        ("grains per yard", 70.86, 0.005),
        ("jute", 34.45, 0.005),
    ],
)
def test_printed_constants(system, printed, within):
    """Units of textile measurement, as printed, rounded."""
    assert to_tex(system, 1) == pytest.approx(printed, abs=within)


def test_the_worsted_constant_is_not_885_5():
    """One printed table gives 885.5 and 885.8 side by side; only the second is right."""
    assert to_tex("worsted", 1) == pytest.approx(885.811871, abs=1e-6)
    assert abs(to_tex("worsted", 1) - 885.5) > 0.3


@pytest.mark.parametrize(
    ("system", "numbers", "printed", "within", "source"),
    [
        ("cotton", (40, 20), 13 + 1 / 3, 1e-9, "Brooks, p. 91"),
        ("cotton", (40, 80, 120), 21.8182, 5e-5, "Brooks, p. 91 (prints 21.81)"),
        ("worsted", (64, 48, 32), 14 + 10 / 13, 1e-9, "Davis, Hosiery Manufacture, ex. 30"),
        ("cotton", (80, 80), 40, 1e-9, "Brooks, p. 91"),
        ("cotton", (30, 30), 15, 1e-9, "Brooks, wrapping chapter"),
    ],
)
def test_printed_plied_counts(system, numbers, printed, within, source):
    assert plied(system, *numbers) == pytest.approx(printed, abs=within), source


def test_the_average_of_the_three_worsted_singles_is_another_number():
    """Davis, Hosiery Manufacture, ex. 30: the average of the three is 44 4/13, that is three times
    the resultant, not the resultant."""
    assert 3 * plied("worsted", 64, 48, 32) == pytest.approx(44 + 4 / 13)


def test_twenty_fifteen_and_twelve_make_five_not_ten():
    """A printed answer finds 1/N = 0.2 and then wrongly doubles it to 10."""
    assert plied("cotton", 20, 15, 12) == pytest.approx(5)


def test_cotton_writes_the_singles_and_spun_silk_the_finished_yarn():
    """Taylor, Cotton Weaving and Designing, p. 239."""
    assert folded("cotton", 40, 2) == pytest.approx(20)
    assert folded("spun silk", 40, 2) == 40
