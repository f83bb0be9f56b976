from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.craft.figure import Figure, UnitMismatch
from app.craft.reel import scale_mass
from app.craft.swatch import combine, grams_per_stitch, unravelled, weighed

TEX = Figure(450, "tex", {"grist": 9.0})


def test_a_weighed_swatch():
    """10 g at 450 tex in 1228 stitches: 10⁶/(450 × 1228) cm each."""
    loop = weighed(scale_mass(10), TEX, 1228)
    assert loop.value == pytest.approx(1.810, abs=0.0005)
    assert loop.causes["the scale's half division"] == pytest.approx(loop.value * 0.0288675)
    assert loop.causes["grist"] == pytest.approx(-loop.value * 0.02)


def test_with_the_loop_of_a_weighed_swatch_the_grist_cancels():
    """The budget in grams: stitches × g per stitch, however unsure the tex."""
    by_grams = grams_per_stitch(scale_mass(10), 1228).scaled(27_480)
    metres = weighed(scale_mass(10), TEX, 1228).scaled(27_480 / 100, "m")
    by_metres = metres.times(TEX, "g").scaled(1 / 1000)
    assert by_metres.value == pytest.approx(by_grams.value)
    assert by_metres.u == pytest.approx(by_grams.u)


def test_an_unravelled_thread():
    """36.2 cm from 20 stitches, 1.5 %."""
    loop = unravelled(36.2, 20)
    assert loop.value == pytest.approx(1.81)
    assert loop.u == pytest.approx(0.02715)


def test_two_ways_are_weighted_by_their_variances():
    """1.80 ± 0.03 and 1.90 ± 0.06: weights 4 : 1."""
    ways = {
        "by thread": Figure(1.80, "cm", {"a": 0.03}),
        "by gauge": Figure(1.90, "cm", {"b": 0.06}),
    }
    both = combine(ways)
    assert both.figure.value == pytest.approx(1.82)
    assert both.figure.u == pytest.approx(1 / sqrt(1 / 0.03**2 + 1 / 0.06**2))
    assert both.weights == {"by thread": pytest.approx(0.8), "by gauge": pytest.approx(0.2)}
    assert both.chief == "by thread"


def test_a_way_without_uncertainty_stands_alone():
    both = combine({"counted": Figure(1.8, "cm"), "by gauge": Figure(1.9, "cm", {"b": 0.1})})
    assert both.figure == Figure(1.8, "cm")
    assert both.chief == "counted"


@pytest.mark.property
@given(st.lists(st.tuples(st.floats(0.5, 5), st.floats(0.01, 1)), min_size=1, max_size=4))
def test_more_ways_are_never_less_sure(found):
    ways = {f"way {n}": Figure(x, "cm", {f"way {n}": u}) for n, (x, u) in enumerate(found)}
    both = combine(ways)
    assert both.figure.u <= min(u for _, u in found) * (1 + 1e-9)
    assert min(x for x, _ in found) - 1e-9 <= both.figure.value <= max(x for x, _ in found) + 1e-9
    assert sum(both.weights.values()) == pytest.approx(1)


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: combine({}), "there is nothing to combine"),
        (lambda: unravelled(0, 20), "the length of the thread must be more than zero"),
        (lambda: unravelled(36, 0), "the number of stitches unravelled must be more than zero"),
        (lambda: weighed(scale_mass(10), Figure(0, "tex"), 10), "linear density in tex must be"),
        (lambda: weighed(scale_mass(10), TEX, 0), "the number of stitches in the swatch must be"),
        (lambda: grams_per_stitch(scale_mass(10), 0), "the number of stitches in the swatch"),
    ],
)
def test_outside_the_domain(call, words):
    with pytest.raises(ValueError, match=words):
        call()


def test_unlike_units_are_not_combined():
    with pytest.raises(UnitMismatch):
        combine({"a": Figure(1, "cm", {"a": 0.1}), "b": Figure(1, "m", {"b": 0.1})})
