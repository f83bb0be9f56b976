from math import radians, tan

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.craft.thickness import wraps_diameter_mm, wraps_from_tex
from app.craft.twist import (
    balanced_ply_twist,
    contraction_from,
    contraction_of,
    english_multiplier,
    per_inch,
    take_up_of,
    turns_for,
    twist_angle,
    twist_factor,
    twist_take_up,
    wheel_turns_per_inch,
)


@pytest.mark.published
def test_twist_from_a_factor():
    """GATE TF 2014 Q19: 25 tex, factor 30: 6 turns per cm."""
    assert turns_for(30, 25) == pytest.approx(6)


@pytest.mark.published
def test_the_factor_of_cotton_spinners():
    """Printed as 9.57; exactly √590.541/2.54."""
    assert 1 / english_multiplier(1) == pytest.approx(9.567344, abs=5e-7)


@pytest.mark.published
def test_a_surface_angle():
    """GATE TF 2022 Q47: 700 kg/m³, factor 6000 per m·√tex: 39°."""
    assert twist_angle(turns_for(60, 100), 100, 1 / 0.7) == pytest.approx(38.7961, abs=5e-4)


def test_the_angle_is_not_that_of_the_wraps_diameter():
    """450 tex at 4 turns per inch: 23°; with the wraps diameter it would come out as 45°."""
    turns = 4 / 2.54
    assert twist_angle(turns, 450) == pytest.approx(23, abs=0.5)
    wrong = 3.14159 * wraps_diameter_mm(wraps_from_tex(450)) / 10 * turns
    assert wrong == pytest.approx(tan(radians(45)), abs=0.02)


@pytest.mark.parametrize(("angle", "percent"), [(20, 3.109), (30, 7.180), (0, 0)])
def test_take_up_of_a_twisted_strand(angle, percent):
    assert 100 * twist_take_up(angle) == pytest.approx(percent, abs=0.0005)


@pytest.mark.property
@given(st.floats(0, 80))
def test_take_up_by_its_closed_form(angle):
    assert twist_take_up(angle) == pytest.approx(tan(radians(angle) / 2) ** 2, abs=1e-12)


@pytest.mark.property
@given(st.floats(0, 0.9))
def test_take_up_and_contraction_are_inverse(take_up):
    assert take_up_of(contraction_from(take_up)) == pytest.approx(take_up, abs=1e-12)


@pytest.mark.published
def test_a_printed_contraction_is_not_take_up():
    """GATE TF 1992 Q3: 16 Ne two-fold with 10 % contraction wants singles of 35.2: the rule is
    c − 1 = 10 %, a take-up of 9.09 %. Read as take-up it would be 35.6."""
    take_up = take_up_of(1.10)
    assert take_up == pytest.approx(0.0909, abs=5e-5)
    assert 16 * 2 * contraction_from(take_up) == pytest.approx(35.2)
    assert 16 * 2 * contraction_from(0.10) == pytest.approx(35.56, abs=0.005)


def test_a_balanced_ply_and_a_wheel():
    assert balanced_ply_twist(6, 2) == pytest.approx(4)
    assert balanced_ply_twist(6, 3) == pytest.approx(4.5)
    assert wheel_turns_per_inch(14, 2, 2) == pytest.approx(14)
    assert per_inch(4) == pytest.approx(10.16)


@pytest.mark.property
@given(st.floats(0, 20), st.floats(1, 5000))
def test_a_factor_and_its_turns(turns, tex):
    assert turns_for(twist_factor(turns, tex), tex) == pytest.approx(turns, abs=1e-12)


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: twist_factor(-1, 25), "twist cannot be less than zero"),
        (lambda: turns_for(30, 0), "linear density in tex must be more than zero"),
        (lambda: contraction_of(90), "between 0 and 90 degrees"),
        (lambda: contraction_of(-1), "between 0 and 90 degrees"),
        (lambda: take_up_of(0.9), "contraction is at least 1"),
        (lambda: contraction_from(1), "take-up must be at least 0 % and less than 100 %"),
        (lambda: balanced_ply_twist(6, 1), "at least two plies, not 1"),
        (lambda: wheel_turns_per_inch(0, 2, 2), "the ratio of the wheel must be more"),
        (lambda: wheel_turns_per_inch(14, 2, 0), "the length drafted must be more"),
    ],
)
def test_outside_the_domain(call, words):
    with pytest.raises(ValueError, match=words):
        call()
