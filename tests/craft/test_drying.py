"""Wool that dries is simulated by the formula, with a truth that is known."""

import random
from math import exp, log

import pytest

from app.craft.drying import CAUSE, Damp, agreed, dry_weight, steady
from app.craft.figure import Figure

NINE_IN_TEN = 1.645


def expected(g: float, u: float) -> Figure:
    return Figure(g, "g", {"yield": u})


@pytest.mark.parametrize(
    ("weighings", "dry"),
    [
        ([], False),
        ([Damp(0, 700)], False),
        ([Damp(0, 700), Damp(24, 650)], False),
        ([Damp(0, 700), Damp(24, 650), Damp(30, 648)], True),
        ([Damp(0, 650), Damp(24, 646.75)], True),
        ([Damp(0, 650), Damp(24, 646.7)], False),
        ([Damp(0, 700), Damp(24, 650), Damp(24.2, 650)], False),
        ([Damp(0, 650), Damp(0.9, 650)], False),
    ],
    ids=["none", "one", "losing", "agree", "half a percent", "more", "too soon", "only too soon"],
)
def test_dry_is_when_weighings_an_hour_apart_agree(weighings, dry):
    assert agreed(weighings) is dry


def test_wool_that_dries_only_loses():
    assert steady([Damp(0, 700), Damp(5, 650), Damp(9, 652)])
    assert not steady([Damp(0, 700), Damp(5, 650), Damp(9, 690)])


def test_one_weighing_leaves_what_was_expected():
    found = dry_weight([Damp(0, 1500)], expected(700, 70))
    assert found.value == pytest.approx(700, rel=0.02)
    assert found.u == pytest.approx(70, rel=0.1)
    assert found.chief_cause == CAUSE


def test_it_cannot_weigh_more_than_it_does():
    found = dry_weight([Damp(0, 600)], expected(700, 70))
    assert found.value < 606
    assert found.u < 70


def test_weighings_along_the_curve_find_where_it_ends():
    """600 g of wool and 500 g of water, half of it gone in 12 hours."""
    along = [Damp(h, 600 + 500 * exp(-log(2) * h / 12)) for h in (0, 12, 24, 36, 60)]
    found = dry_weight(along, expected(700, 100))
    assert found.value == pytest.approx(600, abs=2 * found.u)
    assert found.u < 25


def test_the_range_narrows_as_it_dries():
    along = [Damp(h, 600 + 500 * exp(-log(2) * h / 12)) for h in (0, 12, 24, 36, 60)]
    widths = [dry_weight(along[:count], expected(650, 80)).u for count in range(1, 6)]
    assert widths[1:] == sorted(widths[1:], reverse=True)
    assert widths[-1] < widths[0] / 3


def test_wool_far_lighter_than_was_expected_is_taken_as_it_is():
    found = dry_weight([Damp(0, 100)], expected(10_000, 10))
    assert (found.value, found.u) == (100, pytest.approx(5))


@pytest.mark.parametrize("count", [1, 2, 3, 5])
def test_nine_ranges_in_ten_hold_the_truth(count):
    """Fleeces of 200 to 1500 g, water 15 to 80 % of that, half of it gone in 2 to 40 hours."""
    chance, held, makers = random.Random(count), 0, 120
    for _ in range(makers):
        dry = chance.uniform(200, 1500)
        water, half = dry * chance.uniform(0.15, 0.8), exp(chance.uniform(log(2), log(40)))
        hours = [0.0, *sorted(chance.uniform(3, 60) for _ in range(count - 1))]
        exact = [dry + water * exp(-log(2) * hour / half) for hour in hours]
        weighed = [
            Damp(hour, g * (1 + chance.gauss(0, 0.002)))
            for hour, g in zip(hours, exact, strict=True)
        ]
        guess = expected(dry * (1 + chance.gauss(0, 0.12)), dry * 0.12)
        found = dry_weight(weighed, guess)
        held += abs(found.value - dry) <= NINE_IN_TEN * found.u
    assert held >= 0.85 * makers


def test_without_a_weighing_nothing_is_known():
    with pytest.raises(ValueError, match="without a weighing"):
        dry_weight([], expected(700, 70))
    with pytest.raises(ValueError, match="more than zero"):
        dry_weight([Damp(0, 0)], expected(700, 70))
