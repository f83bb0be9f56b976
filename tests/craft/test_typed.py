"""Numbers as people type them. Milligrams and millimetres are checked by hand from the exact pound
(453.59237 g) and yard (0.9144 m)."""

import subprocess
import sys
from contextlib import suppress
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.craft.typed import LONGEST, Unclear, exact_mm, length_mm, mass_mg, number, whole

THIN, NARROW, FIXED = "\u2009", "\u202f", "\u00a0"


@pytest.mark.parametrize(
    ("text", "mg"),
    [
        ("96", 96_000),
        ("1,5", 1500),
        ("1.5", 1500),
        (".5", 500),
        ("0,250", 250),
        ("5g", 5000),
        ("5 g.", 5000),
        ("1 kg", 1_000_000),
        ("4 oz", 113_398),
        ("4 OZ", 113_398),
        ("1/2 lb", 226_796),
        ("1 lb 4 oz", 566_990),
        ("3 ounces", 85_049),
        ("2 lbs", 907_185),
        ("2×96 g", 192_000),
        ("2x96", 192_000),
        ("2 x 96 g", 192_000),
        ("2*96 g", 192_000),
        ("96 g × 2", 192_000),
        ("96+104 g", 200_000),
        ("96 g + 104", 200_000),
        ("2×96 + 104 g", 296_000),
        ("4 oz + 50 g", 163_398),
        (f"1{THIN}200 g", 1_200_000),
        (f"1{NARROW}200,5 g", 1_200_500),
        (f"1{FIXED}200", 1_200_000),
        ("1 200 g", 1_200_000),
        ("1'200", 1_200_000),
        ("1’200.5", 1_200_500),
        ("12'345'678.9 mg", 12_345_679),
        ("1,200.5", 1_200_500),
        ("1.200,5", 1_200_500),
        ("1,200,000 mg", 1_200_000),
        ("1200,125", 1_200_125),
        ("１２", 12_000),
        ("  7  ", 7000),
        ("0", 0),
    ],
)
def test_weights(text, mg):
    assert mass_mg(text) == mg


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("250 yd", 228_600),
        ("250 yards", 228_600),
        ("3 1/2 in", 89),
        ("3½ in", 89),
        ("½ inch", 13),
        ('3"', 76),
        ("3”", 76),
        ("5 ft 3 in", 1600),
        ("22.5 cm", 225),
        ("1.5 km", 1_500_000),
        ("1,5 m", 1500),
        ("100 km", 100_000_000),
    ],
)
def test_lengths(text, mm):
    assert length_mm(text) == mm


def test_a_bare_number_takes_the_unit_of_its_field():
    assert mass_mg("4", "oz") == 113_398
    assert length_mm("250", "yd") == 228_600
    assert length_mm("20", "cm") == 200
    assert mass_mg("4 g", "oz") == 4000


@pytest.mark.parametrize(
    ("text", "decimal", "readings"),
    [
        ("1,200 m", ".", ("1200", "1.2")),
        ("1.200", ",", ("1200", "1,2")),
        ("2×1,250 m", ".", ("1250", "1.25")),
        ("12,000", ".", ("12000", "12.0")),
    ],
)
def test_a_doubtful_sign_is_asked_about_with_both_readings(text, decimal, readings):
    with pytest.raises(Unclear) as asked:
        length_mm(text, "m", decimal)
    assert "can be read as {} or as {}:".format(*readings) in str(asked.value)


def test_the_sign_of_the_settings_settles_it():
    assert length_mm("1.200 m", "m", ".") == 1200
    assert length_mm("1,200 m", "m", ",") == 1200


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("4 fl oz", "“fl oz” measures a volume, not a weight"),
        ("4 fl. oz", "“fl oz” measures a volume, not a weight"),
        ("5 m", "“m” measures a length: a weight is wanted here, in g, kg, oz or lb."),
        ("5 furlongs", "“furlongs” is not a unit known here"),
        ("5 gr", "“gr” is not a unit known here: type g"),
        ("5 %", "“%” is not a unit known here"),
        ("-3", "A minus sign"),
        ("3−1 g", "A minus sign"),
        ("3-1/2", "A minus sign"),
        ("1e3", "without an exponent"),
        ("nan", "“nan” is not a number."),
        ("inf", "“inf” is not a number."),
        ("", "Type a number."),
        ("   ", "Type a number."),
        ("g", "“g” is not a number."),
        ("+5", "“+5” is not a number."),
        ("5+", "A number is missing at the end"),
        ("2×", "A number is missing at the end"),
        ("1.", "“.” in “1.” is not clear."),
        ("2×(3)", "“(3)” in “2×(3)” is not clear."),
        ("2 g × 3 g", "Two units are multiplied, g by g"),
        ("1 lb + 4 oz + 3", "lb and oz are mixed"),
        ("1 2", "Two numbers stand side by side"),
        ("12 34 g", "Two numbers stand side by side"),
        ("5 kg 2", "Two numbers stand side by side"),
        ("1 lb 2×4 oz", "Two numbers stand side by side"),
        ("1..2", "more commas and points"),
        ("1,20,300", "more commas and points"),
        ("1.200.50", "more commas and points"),
        ("1,2.300,4", "more commas and points"),
        ("3/0 g", "divides by zero"),
        ("3 5/2 g", "is not a whole number and a part"),
        ("1001 kg", "more than a tonne"),
        ("2×600 kg", "more than a tonne"),
        ("9" * (LONGEST + 1), "longer than the 60 characters"),
    ],
)
def test_weights_that_are_not_clear_say_why(text, words):
    with pytest.raises(Unclear) as asked:
        mass_mg(text)
    assert words in str(asked.value)


def test_a_length_beyond_reason_and_a_weight_for_a_length():
    with pytest.raises(Unclear, match="more than 100 km"):
        length_mm("101 km")
    with pytest.raises(Unclear, match="“oz” measures a weight: a length is wanted here"):
        length_mm("4 oz")
    with pytest.raises(Unclear, match="“fl oz” measures a volume, not a length"):
        length_mm("4 fl oz")


def test_plain_numbers():
    assert number("22 1/2") == 22.5
    assert number("22,5", ",") == 22.5
    assert number("60 %", unit="%") == 60
    assert number("60", unit="%") == 60
    with pytest.raises(Unclear, match="without a unit is wanted here, not “cm”"):
        number("22 cm")
    with pytest.raises(Unclear, match="larger than anything expected"):
        number("9999999999")


@pytest.mark.parametrize(
    ("text", "count"),
    [("12", 12), ("12.0", 12), ("1,200", 1200), ("1.200", 1200), ("1 200", 1200), ("48+12", 60)],
)
def test_whole_numbers(text, count):
    assert whole(text) == count


@pytest.mark.parametrize("text", ["12.5", "1/2"])
def test_a_part_of_a_whole_number_is_refused(text):
    with pytest.raises(Unclear, match="is not a whole number"):
        whole(text)


@pytest.mark.property
@given(st.integers(0, 10**9), st.sampled_from(".,"))
def test_what_is_shown_in_grams_is_read_back(mg, decimal):
    text = f"{mg // 1000}{decimal}{mg % 1000:03}"
    assert mass_mg(text, "g", decimal) == mg


@pytest.mark.property
@given(st.integers(0, 100_000), st.sampled_from([" ", THIN, NARROW, FIXED, "'", "’"]))
def test_grouped_thousands_are_read_back(metres, sign):
    assert length_mm(f"{metres:,} m".replace(",", sign)) == metres * 1000


@pytest.mark.property
@given(st.text(max_size=80))
def test_any_text_is_a_number_or_unclear(text):
    for read in (mass_mg, length_mm, number, whole):
        with suppress(Unclear):
            assert read(text) >= 0


@pytest.mark.property
@given(st.text(alphabet="0123456789.,' /×x+gozmcy½\"", max_size=20))
def test_text_that_looks_like_a_number_is_a_number_or_unclear(text):
    for read in (mass_mg, length_mm, number, whole):
        with suppress(Unclear):
            assert read(text) >= 0


@pytest.mark.property
@given(st.integers(1, 30), st.integers(1, 5000))
def test_a_product_is_a_sum_of_equals(times, grams):
    assert mass_mg(f"{times} × {grams} g") == sum(mass_mg(f"{grams} g") for _ in range(times))


@pytest.mark.property
@given(st.integers(1, 2000))
def test_units_hang_together(count):
    assert mass_mg(f"{16 * count} oz") == mass_mg(f"{count} lb")
    assert mass_mg(f"{count}/1000 kg") == mass_mg(f"{count} g") == mass_mg(f"{1000 * count} mg")
    assert length_mm(f"{36 * count} in") == length_mm(f"{3 * count} ft") == length_mm(f"{count} yd")
    assert length_mm(f"{count} m") == length_mm(f"{100 * count} cm")


def test_the_unit_registry_waits_until_someone_types():
    ask = "import sys, app.craft.typed; print('pint' in sys.modules)"
    done = subprocess.run([sys.executable, "-c", ask], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "False"


def test_a_length_can_be_had_unrounded():
    assert exact_mm("4", "in") == Fraction("101.6")
    assert exact_mm("2 × 4 in", "cm") == Fraction("203.2")
    assert length_mm("4", "in") == 102
