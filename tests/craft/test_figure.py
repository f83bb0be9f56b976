"""Figures against `uncertainties`, an independent reckoning of the same idea."""

from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.craft.cloth import square_metre
from app.craft.fabric import row_per_width, yarn_in
from app.craft.figure import Figure, UnitMismatch, total
from app.craft.fleece import Losses, prepared_from, share_kept, wool_for, yarn_from
from app.craft.swatch import grams_per_stitch, weighed

VALUE = st.floats(0.5, 500)
U = st.floats(0.001, 5)

LOSSES = Losses(0.15, 0.10, 0.03, 0.0)


@pytest.mark.property
@given(VALUE, VALUE, VALUE, U, U, U)
def test_the_reference_agrees_where_errors_are_shared(a, b, c, ua, ub, uc):
    """(a·b + c·a)/b − a, with a in all the places at once."""
    from uncertainties import ufloat

    x, y, z = ufloat(a, ua), ufloat(b, ub), ufloat(c, uc)
    reference = (x * y + z * x) / y - x
    fa, fb, fc = Figure(a, "m", {"a": ua}), Figure(b, "m", {"b": ub}), Figure(c, "m", {"c": uc})
    ours = (fa.times(fb, "m2") + fc.times(fa, "m2")).per(fb, "m") - fa
    assert ours.value == pytest.approx(reference.nominal_value, rel=1e-9, abs=1e-6)
    assert ours.u == pytest.approx(reference.std_dev, rel=1e-6, abs=1e-9)


@pytest.mark.property
@given(VALUE, VALUE, U, U, U)
def test_what_two_figures_share_is_their_covariance(a, b, shared, ua, ub):
    first = Figure(a, "m", {"reel": shared, "a": ua})
    second = Figure(b, "m", {"reel": shared, "b": ub})
    assert first.covariance(second) == pytest.approx(shared**2)
    assert (first - second).u == pytest.approx(sqrt(ua**2 + ub**2))
    assert (first + second).u == pytest.approx(sqrt((2 * shared) ** 2 + ua**2 + ub**2))


@pytest.mark.property
@given(VALUE, U)
def test_a_figure_less_itself_is_exactly_nothing(a, u):
    one = Figure(a, "m", {"reel": u})
    assert (one - one).value == 0
    assert (one - one).u == 0


def test_units_are_kept_apart():
    with pytest.raises(UnitMismatch, match="m and g cannot be added"):
        Figure(1, "m") + Figure(1, "g")
    with pytest.raises(UnitMismatch):
        Figure(1, "m") - Figure(1, "g")


@pytest.mark.parametrize(
    "call",
    [
        lambda: yarn_in(100, Figure(18, "mm")),
        lambda: row_per_width(22, Figure(18, "mm")),
        lambda: weighed(Figure(10, "g"), Figure(9, "denier"), 100),
        lambda: weighed(Figure(0.35, "oz"), Figure(450, "tex"), 100),
        lambda: grams_per_stitch(Figure(0.35, "oz"), 100),
        lambda: square_metre(22, 30, Figure(1.8, "cm"), Figure(222, "m/100 g")),
        lambda: yarn_from(Figure(2, "kg"), "raw", Figure(0.6, "share"), LOSSES),
        lambda: prepared_from(Figure(2, "kg"), "raw", Figure(0.6, "share"), LOSSES),
        lambda: wool_for(Figure(2, "kg"), "raw", Figure(0.6, "share"), LOSSES),
        lambda: share_kept("raw", Figure(60, "%"), LOSSES),
        lambda: share_kept("drying", Figure(0.6, "share"), LOSSES, Figure(25, "%")),
    ],
)
def test_a_figure_in_another_unit_is_never_guessed(call):
    with pytest.raises(UnitMismatch, match="is wanted, not in"):
        call()


def test_the_largest_contribution_is_the_chief_cause():
    length = Figure(213, "m", {"half a turn": 0.4, "reel": -1.1})
    assert length.chief_cause == "reel"
    assert Figure(213, "m").chief_cause == ""
    assert Figure(213, "m").u == 0


def test_scaling_widening_and_adding_up():
    length = Figure(2, "m", {"reel": 0.1}).unsure("stretch", 0.2)
    assert length.scaled(100, "cm") == Figure(200, "cm", {"reel": 10, "stretch": 20})
    assert length.scaled(2).unit == "m"
    assert total([length, length], "m").value == 4
    assert total([], "m") == Figure(0.0, "m")


def test_nothing_divides_by_zero():
    with pytest.raises(ZeroDivisionError):
        Figure(1, "g").per(Figure(0, "m"), "g/m")
