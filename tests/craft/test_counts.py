import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.craft.counts import (
    COUNTS,
    count_system,
    folded,
    from_tex,
    metres_per_100g,
    plied,
    tex_of,
    to_tex,
    yards_per_pound,
)

NUMBER = st.floats(0.01, 1e5)
SYSTEM = st.sampled_from(sorted(COUNTS))


def test_the_skein_of_the_handbook():
    """1.5 m girth, 142 turns, 96 g: by hand 96000/213 tex, 21300/96 m per 100 g."""
    tex = tex_of(96, 213)
    assert tex == pytest.approx(450.70, abs=0.005)
    assert metres_per_100g(tex) == pytest.approx(221.875)
    assert yards_per_pound(tex) == pytest.approx(1100.6, abs=0.05)


def test_a_metre_per_100g_in_yards_per_pound():
    assert yards_per_pound(100_000) == pytest.approx(4.960546479, abs=1e-9)


def test_grist_in_pounds_and_in_hundred_grams_by_the_long_way():
    """Ten thousand metres a pound: yards by 0.9144, pounds by 453.59237 g."""
    assert metres_per_100g(to_tex("yd/lb", 1000)) == pytest.approx(914.4 / 4.5359237)


@pytest.mark.property
@given(SYSTEM, NUMBER)
def test_there_and_back(system, number):
    assert from_tex(system, to_tex(system, number)) == pytest.approx(number, rel=1e-12)


@pytest.mark.property
@given(SYSTEM, SYSTEM, NUMBER)
def test_the_way_round_by_another_system_makes_no_difference(first, second, number):
    there = from_tex(second, to_tex(first, number))
    assert to_tex(second, there) == pytest.approx(to_tex(first, number), rel=1e-12)


@pytest.mark.property
@given(SYSTEM, st.lists(NUMBER, min_size=1, max_size=6))
def test_plying_adds_the_tex_whatever_the_system(system, numbers):
    whole = sum(to_tex(system, number) for number in numbers)
    assert to_tex(system, plied(system, *numbers)) == pytest.approx(whole)


@pytest.mark.property
@given(NUMBER, NUMBER)
def test_thicker_yarn_is_a_higher_direct_and_a_lower_indirect_count(one, other):
    assert (to_tex("denier", one) < to_tex("denier", other)) == (one < other)
    assert (to_tex("cotton", one) > to_tex("cotton", other)) == (one < other)


def test_dtex_is_a_tenth_and_denier_a_ninth_of_a_tex():
    assert to_tex("dtex", 10) == pytest.approx(1)
    assert to_tex("denier", 9) == pytest.approx(1)


@pytest.mark.parametrize("number", [0, -1, float("nan"), float("inf")])
def test_a_count_that_is_no_number_above_zero_is_refused_in_words(number):
    with pytest.raises(ValueError, match="must be more than zero"):
        to_tex("cotton", number)
    with pytest.raises(ValueError, match="must be more than zero"):
        from_tex("cotton", number)
    with pytest.raises(ValueError, match="must be more than zero"):
        plied("cotton", 20, number)


def test_mass_and_length_must_both_be_there():
    with pytest.raises(ValueError, match="length in m must be more than zero"):
        tex_of(96, 0)
    with pytest.raises(ValueError, match="mass in g must be more than zero"):
        tex_of(0, 213)


def test_what_is_not_known_or_not_there_is_refused():
    with pytest.raises(ValueError, match="no count system is called 'ells'"):
        count_system("ells")
    with pytest.raises(ValueError, match="at least one"):
        plied("tex")
    with pytest.raises(ValueError, match="at least one"):
        folded("cotton", 40, 0)


def test_folded_yarns_are_numbered_by_the_single_or_by_the_whole():
    assert folded("cotton", 40, 2) == pytest.approx(20)
    assert folded("spun silk", 40, 2) == 40


def test_every_system_says_where_it_comes_from():
    for count in COUNTS.values():
        assert count.source
        assert (count.standing == "memory") == ("remembered" in count.source)
