from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.book.settings import Settings
from app.craft.figure import Figure
from app.craft.typed import length_mm, mass_mg
from app.web.shown import MINUS, THIN, Shown, as_typed

METRIC = Shown(Settings())
COMMA = Shown(Settings(decimal=","))
YARDS = Shown(Settings(length_unit="yd", mass_unit="oz", grist_unit="yd/lb"))


def test_thousands_and_units_are_parted_by_a_narrow_space_that_does_not_break():
    assert METRIC.length(12345.4) == f"12{THIN}345{THIN}m"
    assert METRIC.mass(1640) == f"1{THIN}640{THIN}g"


def test_the_decimal_sign_is_hers():
    assert METRIC.number(1.5, 1) == "1.5"
    assert COMMA.number(1234.5, 1) == f"1{THIN}234,5"
    assert COMMA.field_number(0.25) == "0,25"


def test_a_number_below_zero_has_a_true_minus_and_zero_has_none():
    assert METRIC.number(-12.34, 1) == f"{MINUS}12.3"
    assert METRIC.number(-0.01, 1) == "0.0"


def test_what_is_left_rounds_down_and_what_is_missing_rounds_up():
    assert METRIC.at_least_length(209.9) == f"209{THIN}m"
    assert METRIC.short_length(209.1) == f"210{THIN}m"
    assert METRIC.at_least_mass(95.99) == f"95{THIN}g"
    assert METRIC.short_mass(94.01) == f"95{THIN}g"
    assert METRIC.length(209.5) == f"210{THIN}m"


def test_the_dust_of_floating_point_neither_costs_nor_gives_a_metre():
    assert METRIC.at_least_length(0.1 * 3 * 1000) == f"300{THIN}m"
    assert METRIC.at_least_length(68 - 1e-12) == f"68{THIN}m"
    assert METRIC.short_length(210 + 1e-12) == f"210{THIN}m"


def test_small_amounts_keep_a_tenth():
    assert METRIC.mass(4.25) == f"4.3{THIN}g"
    assert METRIC.at_least_length(7.39) == f"7.3{THIN}m"
    assert METRIC.length(0) == f"0{THIN}m"


def test_yards_and_ounces():
    assert YARDS.length(91.44) == f"100{THIN}yd"
    assert YARDS.mass(100) == f"3.5{THIN}oz"
    assert YARDS.at_least_mass(28.349523125 * 120.9) == f"7{THIN}lb{THIN}8{THIN}oz"
    assert YARDS.mass(28.349523125 * 81.72) == f"5{THIN}lb{THIN}1.7{THIN}oz"
    assert YARDS.mass(28.349523125 * 31.94) == f"31.9{THIN}oz"
    assert YARDS.mass(28.349523125 * 31.96) == f"2{THIN}lb"
    assert YARDS.mass(-28.349523125 * 48) == f"{MINUS}3{THIN}lb"


@pytest.mark.published
def test_grist_in_each_unit():
    """450.70 tex is 221.9 m/100 g and 1100.6 yd/lb (a skein of 142 turns of 1.5 m, 96 g)."""
    assert METRIC.grist(96_000 / 213) == f"222{THIN}m/100{THIN}g"
    assert YARDS.grist(96_000 / 213) == f"1{THIN}101{THIN}yd/lb"
    assert Shown(Settings(grist_unit="tex")).grist(96_000 / 213) == f"451{THIN}tex"


def test_sizes_are_in_centimetres_beside_metres_and_in_inches_beside_yards():
    assert METRIC.size(1040) == f"104{THIN}cm"
    assert METRIC.size(1045) == f"104.5{THIN}cm"
    assert YARDS.size(1016) == f"40{THIN}in"


def test_odds_are_said_as_a_person_would():
    assert METRIC.odds(0.95) == "19 times in 20"
    assert METRIC.odds(0.05) == "once in 20"
    assert METRIC.odds(0.9999) == "practically every time"
    assert METRIC.odds(0.0) == "hardly ever"


def test_a_range_holds_nine_in_ten_and_is_not_over_exact():
    figure = Figure(940.0, "g", {"yield": 66.0})  # 940 ± 108.6
    assert METRIC.mass_range(figure) == f"820 to 1{THIN}060{THIN}g"
    assert METRIC.length_range(Figure(10.0, "m", {"reel": 20.0})).startswith("0 to ")


def test_a_figure_with_its_uncertainty():
    assert METRIC.length_give_or_take(Figure(497.1, "m", {"gauge": 21.2})) == f"497 ± 21{THIN}m"
    assert METRIC.mass_give_or_take(Figure(180.4, "g")) == f"180 ± 0{THIN}g"
    assert METRIC.figure(1.8091, "cm", 0.04) == f"1.809 ± 0.04{THIN}cm"


def test_a_day_in_words():
    assert METRIC.day(date(2026, 3, 1)) == "1\u00a0March\u00a02026"


@pytest.mark.property
@given(st.integers(0, 10**8 - 100), st.sampled_from([METRIC, COMMA, YARDS]))
def test_what_a_field_shows_reads_back_as_the_same_length(mm: int, shown: Shown):
    settings = shown.settings
    assert length_mm(shown.field_length(mm), settings.length_unit, settings.decimal) == mm


@pytest.mark.property
@given(st.integers(0, 10**9 - 100), st.sampled_from([METRIC, COMMA, YARDS]))
def test_what_a_field_shows_reads_back_as_the_same_mass(mg: int, shown: Shown):
    settings = shown.settings
    assert mass_mg(shown.field_mass(mg), settings.mass_unit, settings.decimal) == mg


@pytest.mark.property
@given(st.floats(0, 1e7))
def test_left_never_exceeds_and_short_never_falls_below(m: float):
    def metres(text: str) -> float:
        return float(text.replace(THIN, "").removesuffix("m"))

    assert metres(METRIC.at_least_length(m)) <= m * (1 + 1e-9) + 1e-9
    assert metres(METRIC.short_length(m)) >= m * (1 - 1e-9) - 1e-9


def test_a_figure_is_shown_no_finer_than_its_uncertainty():
    assert METRIC.figure(41.778, "cm", 2.0889) == f"41.8 ± 2.1{THIN}cm"
    assert METRIC.figure(497.13, "m", 34.8) == f"497 ± 35{THIN}m"
    assert METRIC.figure(27480, "stitches") == f"27{THIN}480{THIN}stitches"
    assert METRIC.figure(0.0, "m", 0.0) == f"0 ± 0{THIN}m"


@pytest.mark.parametrize(
    ("text", "told"), [("96", "96 g"), ("88 g", "88 g"), ("3 oz", "3 oz"), ("2×48", "2×48 g")]
)
def test_what_was_typed_is_shown_with_one_unit(text, told):
    assert as_typed(text, "g") == told
