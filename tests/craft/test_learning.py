import random
from math import exp, log, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.craft.learning import Belief, Normal, Observed, evenness, take_in

MAKER, BREED, FLEECE = (
    ("scour", "maker", ""),
    ("scour", "breed", "Cheviot"),
    ("scour", "fleece", "1"),
)
SPREAD = {"maker": 0.10, "breed": 0.08, "fleece": 0.06}


def by_level(effect):
    return Normal(0.0, SPREAD[effect[1]])


def seen(value, key="one", effects=(MAKER,), sd=0.05):
    return Observed(key, effects, value, sd)


def test_the_kernel_against_a_worked_normal_mean():
    """Prior N(600, 25²), sixty values of sd 116 with the mean 538: 554.3724 ± 12.8470."""
    belief = Belief(lambda _: Normal(600.0, 25.0))
    belief.see(seen(538.0, sd=116 / sqrt(60)))
    now = belief.expected([MAKER])
    assert now.mean == pytest.approx(554.3724, abs=5e-5)
    assert now.sd == pytest.approx(12.8470, abs=5e-5)


def test_sixty_values_one_by_one_are_the_same_as_their_mean():
    belief = Belief(lambda _: Normal(600.0, 25.0))
    for i in range(60):
        belief.see(seen(538.0 + (-1) ** i * 70, sd=116))
    now = belief.expected([MAKER])
    assert (now.mean, now.sd) == (
        pytest.approx(554.3724, abs=5e-5),
        pytest.approx(12.847, abs=5e-5),
    )


def test_two_levels_by_hand():
    """A sum of 0.10² + 0.06² seen with 0.05²: each level takes its share of what was seen."""
    belief = Belief(by_level)
    belief.see(seen(0.2, effects=(MAKER, FLEECE)))
    whole = 0.01 + 0.0036 + 0.0025
    assert belief.expected([MAKER]).mean == pytest.approx(0.2 * 0.01 / whole)
    assert belief.expected([FLEECE]).mean == pytest.approx(0.2 * 0.0036 / whole)
    both = belief.expected([MAKER, FLEECE])
    assert both.sd**2 == pytest.approx(0.0136 - 0.0136**2 / whole)
    assert belief.expected([MAKER, FLEECE], 0.05).sd == pytest.approx(sqrt(both.sd**2 + 0.0025))


def test_another_fleece_learns_from_the_maker_and_not_from_the_fleece():
    belief = Belief(by_level)
    for i in range(8):
        belief.see(seen(0.2, str(i), (MAKER, FLEECE)))
    here = belief.expected([MAKER, FLEECE])
    there = belief.expected([MAKER, ("scour", "fleece", "2")])
    assert 0 < there.mean < here.mean < 0.2
    assert there.sd > here.sd


def test_what_has_nothing_in_common_is_left_alone():
    belief = Belief(by_level)
    belief.see(seen(0.2))
    assert belief.expected([("card", "maker", "")]) == Normal(0.0, 0.10)


def test_an_observation_of_two_steps_tells_of_their_sum():
    """A wash from raw tells of skirting and scouring at once: they then err against each other."""
    skirt = ("skirt", "maker", "")
    belief = Belief(by_level)
    belief.see(seen(-0.3, effects=(skirt, MAKER)))
    alone = belief.expected([skirt]).sd ** 2 + belief.expected([MAKER]).sd ** 2
    assert belief.expected([skirt, MAKER]).sd ** 2 < alone


def test_an_absurd_one_is_set_aside_until_it_is_let_in():
    values = [0.02, -0.03, 2.5, 0.01]
    observed = [seen(value, str(i)) for i, value in enumerate(values)]
    without, with_it, let = Belief(by_level), Belief(by_level), Belief(by_level)
    take_in(without, [one for one in observed if one.key != "2"], {})
    judged = take_in(with_it, observed, {})
    assert [one.standing for one in judged] == ["counts", "counts", "set aside", "counts"]
    assert judged[2].off > 3.5
    assert with_it.expected([MAKER]) == without.expected([MAKER])
    judged = take_in(let, observed, {"2": "let in"})
    assert judged[2].standing == "let in"
    assert let.expected([MAKER]).mean > without.expected([MAKER]).mean + 0.1


def test_one_struck_out_counts_for_nothing_however_good():
    belief = Belief(by_level)
    judged = take_in(belief, [seen(0.02)], {"one": "struck out"})
    assert judged[0].standing == "struck out"
    assert belief.expected([MAKER]) == Normal(0.0, 0.10)


def test_let_in_says_nothing_of_an_ordinary_one():
    judged = take_in(Belief(by_level), [seen(0.02)], {"one": "let in"})
    assert judged[0].standing == "counts"


def test_a_range_in_logs_and_as_a_factor():
    one = Normal(log(0.9), 0.1)
    low, high = one.factor_range()
    assert (low, high) == (
        pytest.approx(0.9 * exp(-0.16449), 1e-4),
        pytest.approx(0.9 * exp(0.16449), 1e-4),
    )
    assert one.range(0.5)[0] == pytest.approx(log(0.9) - 0.067449, abs=1e-6)


def test_an_error_of_nothing_is_refused():
    with pytest.raises(ValueError, match="error above zero"):
        Belief(by_level).see(seen(1.0, sd=0.0))


@pytest.mark.property
@given(st.lists(st.floats(-0.3, 0.3), min_size=2, max_size=8), st.randoms())
def test_the_order_does_not_matter(values, chance):
    observed = [
        seen(value, str(i), (MAKER, BREED, ("scour", "fleece", str(i % 3))))
        for i, value in enumerate(values)
    ]
    mixed = chance.sample(observed, len(observed))
    one, other = Belief(by_level), Belief(by_level)
    for first, second in zip(observed, mixed, strict=True):
        one.see(first)
        other.see(second)
    for effects in ([MAKER], [MAKER, BREED, ("scour", "fleece", "1")]):
        assert one.expected(effects).mean == pytest.approx(other.expected(effects).mean, abs=1e-9)
        assert one.expected(effects).sd == pytest.approx(other.expected(effects).sd, abs=1e-9)


@pytest.mark.property
@given(st.lists(st.floats(-0.5, 0.5), min_size=1, max_size=12))
def test_seeing_more_never_makes_it_less_sure(values):
    belief, before = Belief(by_level), SPREAD["maker"]
    for i, value in enumerate(values):
        belief.see(seen(value, str(i), (MAKER, BREED)))
        now = belief.expected([MAKER]).sd
        assert now <= before + 1e-12
        before = now


def test_ten_observations_leave_less_than_half_the_range_of_one():
    chance, belief, widths = random.Random(1), Belief(by_level), []
    for i in range(10):
        effects = (MAKER, BREED, ("scour", "fleece", str(i)))
        belief.see(seen(chance.gauss(0, 0.1), str(i), effects))
        low, high = belief.expected([MAKER, BREED]).range()
        widths.append(high - low)
    assert widths[-1] < widths[0] / 2


def test_evenness_is_learned_from_how_far_observations_strayed():
    """Eight of practice at 1 and, by hand, each observation's square."""
    assert evenness([]) == 1.0
    judged = take_in(Belief(by_level), [seen(0.0, str(i)) for i in range(8)], {})
    assert evenness(judged) == pytest.approx(sqrt(8 / 16))
    rough = take_in(Belief(by_level), [seen(0.15, "1"), seen(9.0, "2")], {})
    assert rough[1].standing == "set aside"
    assert evenness(rough) == pytest.approx(sqrt((8 + 0.15**2 / (0.1**2 + 0.05**2)) / 9))
