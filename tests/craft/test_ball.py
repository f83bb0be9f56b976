"""How far a ball reaches: against drawn yarns, by hand where the yarn is even, and by its laws."""

import random
from math import exp, sqrt
from statistics import mean, pstdev

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.craft.ball import Ball, Weighed, wandered

EVEN = ((1e-6, 20.0, 1.0),)
"""A yarn whose grist hardly strays."""


def a_ball(*weighed, expected=0.45, **other):
    return Ball(tuple(Weighed(*one) for one in weighed), expected, **other)


def drifting(chance, cv, k, metres):
    """The drift of a yarn metre by metre."""
    keep = exp(-1 / k)
    at = chance.gauss(0, cv)
    for _ in range(metres):
        yield at
        at = at * keep + chance.gauss(0, cv * sqrt(1 - keep * keep))


@pytest.mark.parametrize(("k", "a", "b"), [(5.0, 60, 60), (20.0, 40, 120), (50.0, 30, 200)])
def test_what_a_drift_adds_up_to_against_drawn_yarns(k, a, b):
    chance = random.Random(7)
    sums = []
    for _ in range(4000):
        drift = list(drifting(chance, 1.0, k, b))
        sums.append((sum(drift[:a]), sum(drift[:b])))
    drawn = mean(x * y for x, y in sums)
    assert wandered(k, a, b) == pytest.approx(drawn, rel=0.12)


def test_a_drift_that_never_changes_adds_up_like_a_level():
    assert wandered(1e7, 30.0, 90.0) == pytest.approx(30.0 * 90.0, rel=1e-4)


def test_a_drift_that_forgets_at_once_adds_up_like_noise():
    """Var = 2·k·a for k much shorter than a."""
    assert wandered(0.01, 100.0, 100.0) == pytest.approx(2 * 0.01 * 100.0, rel=1e-3)


def test_an_even_ball_ends_where_the_line_through_its_weighings_does():
    """100 g, 70 g after 60 planned metres: half a gram a metre, so it ends after 200."""
    ball = a_ball((0, 100.0, 0.01), (60, 70.0, 0.01), drifts=EVEN, level_u=10.0)
    assert ball.reaches(0.5) == pytest.approx(200.0, abs=0.1)
    assert ball.left(60)[0] == pytest.approx(70.0, abs=0.01)


def test_before_it_is_knit_the_ball_goes_by_what_was_expected():
    ball = a_ball((0, 90.0, 1.0))
    assert ball.reaches(0.5) == pytest.approx(200.0, rel=0.001)
    mean, u = ball.left(100.0)
    assert mean == pytest.approx(45.0)
    assert u == pytest.approx(sqrt((0.45 * 100 * 0.11) ** 2 + 0.3**2), rel=0.15)


def test_a_lighter_ball_than_expected_reaches_less_far():
    fast = a_ball((0, 100.0), (100, 50.0))
    slow = a_ball((0, 100.0), (100, 60.0))
    assert fast.reaches(0.5) < slow.reaches(0.5)
    assert fast.odds(210.0) < slow.odds(210.0)


def test_uneven_yarn_is_recognised_and_handed_on():
    """Weighings that stray by more than even yarn could make the larger deviations likelier."""
    strays = a_ball((0, 150.0), (40, 130.0), (80, 118.0), (120, 94.0), (160, 84.0), (200, 60.0))
    straight = a_ball((0, 150.0), (40, 132.0), (80, 114.0), (120, 96.0), (160, 78.0), (200, 60.0))

    def uneven(ball):
        return sum(weight for cv, _, weight in ball.drift_weights if cv > 0.05)

    assert uneven(strays) > uneven(straight)
    assert sum(weight for *_, weight in strays.drift_weights) == pytest.approx(1.0)
    following = a_ball((0, 100.0), (100, 55.0), drifts=strays.drift_weights)
    other = a_ball((0, 100.0), (100, 55.0), drifts=straight.drift_weights)
    assert following.reaches(0.95) < other.reaches(0.95)


def test_a_weighing_that_cannot_be_is_a_surprise():
    ball = a_ball((0, 100.0), (100, 55.0))
    assert abs(ball.surprise(Weighed(120, 46.0))) < 1.0
    assert ball.surprise(Weighed(120, 58.0)) > 3.5
    assert ball.surprise(Weighed(120, 20.0)) < -3.5


@pytest.mark.property
@given(
    st.floats(30, 200),
    st.lists(st.tuples(st.floats(5, 100), st.floats(0.2, 0.8)), max_size=4),
    st.floats(0.05, 0.95),
)
def test_laws(grams, steps, share):
    """Odds fall with the distance, the range holds its share, and what is left never grows."""
    weighed, x, g = [Weighed(0.0, grams)], 0.0, grams
    for gap, rate in steps:
        x, g = x + gap, max(0.0, g - gap * rate)
        weighed.append(Weighed(x, g))
    ball = Ball(tuple(weighed), 0.45)
    reached = ball.reaches(share)
    assert reached >= x
    odds = [ball.odds(x + more) for more in (0.0, 10.0, 50.0, 200.0, 1000.0)]
    assert odds == sorted(odds, reverse=True)
    if odds[0] > share:
        assert ball.odds(reached) == pytest.approx(share, abs=0.01)


def test_an_exact_end_without_any_doubt():
    """Nothing unsure: the odds are one before the end and none after it."""
    ball = Ball((Weighed(0.0, 45.0, 1e-9),), 0.45, level_u=0.0, drifts=((0.0, 20.0, 1.0),))
    assert ball.odds(99.0) == pytest.approx(1.0)
    assert ball.odds(101.0) == pytest.approx(0.0)


def test_pstdev_of_the_drawn_yarn_is_what_was_asked():
    """The control of the simulation above."""
    drawn = [one for seed in range(200) for one in drifting(random.Random(seed), 0.08, 20.0, 50)]
    assert pstdev(drawn) == pytest.approx(0.08, rel=0.1)
