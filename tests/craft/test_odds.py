import random
from math import erf, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.craft.figure import Figure
from app.craft.odds import (
    expected_above_zero,
    joint_odds,
    normal_quantile,
    raise_to,
    spill_over,
    times_in_twenty,
    whole_up,
)

CAUSES = st.dictionaries(
    st.sampled_from(["gauge", "reel", "hand", "scale"]), st.floats(-40, 40), min_size=1
)
MARGINS = st.lists(
    st.builds(lambda value, causes: Figure(value, "m", causes), st.floats(-80, 80), CAUSES),
    min_size=1,
    max_size=4,
)


def drawn(margins, times=40_000, seed=7):
    """The same odds by drawing every cause at random (JCGM 101:2008, Monte Carlo)."""
    chance = random.Random(seed)
    names = sorted({name for one in margins for name in one.causes})
    hits = 0
    for _ in range(times):
        state = {name: chance.gauss(0, 1) for name in names}
        hits += all(
            one.value + sum(state[name] * part for name, part in one.causes.items()) >= 0
            for one in margins
        )
    return hits / times


def test_one_margin_is_the_normal_distribution():
    odds, half_width = joint_odds([Figure(30.0, "m", {"gauge": 20.0})])
    assert odds == pytest.approx(0.5 * (1 + erf(1.5 / sqrt(2))))
    assert half_width == 0.0


def test_a_margin_without_doubt_is_yes_or_no():
    assert joint_odds([Figure(0.0, "m")]) == (1.0, 0.0)
    assert joint_odds([Figure(-1.0, "m"), Figure(50.0, "m", {"gauge": 1.0})]) == (0.0, 0.0)
    assert joint_odds([]) == (1.0, 0.0)


def test_independent_margins_multiply():
    nine_in_ten = normal_quantile(0.9)
    margins = [Figure(nine_in_ten, "m", {name: 1.0}) for name in "abc"]
    assert joint_odds(margins)[0] == pytest.approx(0.9**3, abs=1e-3)


def test_a_wholly_shared_error_counts_once():
    margins = [Figure(10.0, "m", {"gauge": 8.0}), Figure(5.0, "m", {"gauge": 8.0})]
    assert joint_odds(margins)[0] == pytest.approx(0.5 * (1 + erf(0.625 / sqrt(2))))


def test_opposed_errors_leave_only_the_overlap():
    margins = [Figure(1.0, "m", {"gauge": 1.0}), Figure(1.0, "m", {"gauge": -1.0})]
    assert joint_odds(margins)[0] == pytest.approx(erf(1 / sqrt(2)), abs=5e-3)


@pytest.mark.parametrize("seed", range(6))
def test_shared_errors_agree_with_random_draws(seed):
    chance = random.Random(seed)
    margins = [
        Figure(
            chance.uniform(-10, 30),
            "m",
            {name: chance.uniform(-20, 20) for name in ("gauge", "reel", f"own {i}")},
        )
        for i in range(2 + seed % 3)
    ]
    assert joint_odds(margins)[0] == pytest.approx(drawn(margins), abs=0.012)


@pytest.mark.property
@given(MARGINS, st.floats(0, 60))
def test_more_yarn_never_lowers_the_odds(margins, more):
    raised = [Figure(one.value + more, one.unit, one.causes) for one in margins]
    assert joint_odds(raised)[0] >= joint_odds(margins)[0] - 2e-3


@pytest.mark.property
@given(MARGINS, st.floats(0.5, 0.99))
def test_what_is_added_reaches_the_wanted_odds(margins, wanted):
    added = raise_to(margins, wanted)
    assert min(added) >= 0
    raised = [
        Figure(one.value + more, one.unit, one.causes)
        for one, more in zip(margins, added, strict=True)
    ]
    odds, half_width = joint_odds(raised)
    assert odds >= wanted - max(2 * half_width, 1e-3)


def test_nothing_is_added_where_the_odds_suffice():
    assert raise_to([Figure(100.0, "m", {"gauge": 10.0})], 0.9) == [0.0]


def test_one_yarn_short_needs_its_quantile():
    (added,) = raise_to([Figure(-10.0, "m", {"gauge": 20.0})], 0.9)
    assert added == pytest.approx(10 + 1.2815516 * 20, abs=1e-3)


def test_left_over_cut_at_zero():
    assert expected_above_zero(Figure(5.0, "m")) == 5.0
    assert expected_above_zero(Figure(-5.0, "m")) == 0.0
    even = expected_above_zero(Figure(0.0, "m", {"gauge": 10.0}))
    assert even == pytest.approx(10 * 0.3989423)


def test_spill_over_agrees_with_random_draws():
    chance = random.Random(3)
    draws = [max(0.0, chance.gauss(0, 20) - 10) for _ in range(200_000)]
    mean = sum(draws) / len(draws)
    deviation = sqrt(sum((one - mean) ** 2 for one in draws) / len(draws))
    found = spill_over(Figure(10.0, "m", {"gauge": 20.0}))
    assert found == pytest.approx((mean, deviation), rel=0.01)


def test_a_margin_without_doubt_spills_nothing():
    assert spill_over(Figure(10.0, "m")) == (0.0, 0.0)


@pytest.mark.parametrize(
    ("odds", "times"),
    [(1.0, 20), (0.994, 19), (0.95, 19), (0.9, 18), (0.13, 3), (0.01, 1), (0.0, 0), (0.5, 10)],
)
def test_odds_as_a_person_would_say_them(odds, times):
    assert times_in_twenty(odds) == times


def test_rounding_up_forgives_dust():
    assert whole_up(3.0000000001) == 3
    assert whole_up(3.01) == 4
