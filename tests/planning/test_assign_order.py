"""The order of knitting: changes where they show least, colours step by step."""

from itertools import pairwise, permutations
from random import Random

import pytest

from app.planning.assign_order import EXACTLY, shows, skein_order


def flat(_one, _other):
    return 0.0


def by_shade(shades):
    return lambda one, other: abs(shades[one] - shades[other])


def cost(order, lengths, needs, weights, step):
    """The same sum, told the long way round."""
    ends = [sum(needs[: n + 1]) for n in range(len(needs))]
    found, metres = 0.0, 0
    for one, other in pairwise(order):
        metres += lengths[one]
        inside = [w for end, w in zip(ends, weights, strict=True) if metres < end]
        if metres not in ends and inside:
            found += inside[0] * (1 + step(one, other))
    return found


@pytest.mark.parametrize("seed", range(25))
def test_no_order_costs_less(seed):
    chance = Random(seed)
    count = chance.randint(1, 5)
    lengths = [chance.randint(20, 60) for _ in range(count)]
    needs = [chance.randint(20, 90) for _ in range(chance.randint(1, 3))]
    weights = [chance.choice((1.0, 0.6)) for _ in needs]
    step = by_shade([chance.random() for _ in lengths])
    found = skein_order(lengths, needs, weights, step)
    assert sorted(found) == list(range(count))
    least = min(cost(one, lengths, needs, weights, step) for one in permutations(range(count)))
    assert cost(found, lengths, needs, weights, step) == pytest.approx(least)


def test_a_change_falls_between_two_parts_where_it_can():
    assert skein_order([40, 60], [60, 40], [1.0, 1.0], flat) == [1, 0]


def test_of_orders_that_cost_the_same_the_first_by_code():
    assert skein_order([50, 50, 50], [150], [1.0], flat) == [0, 1, 2]


def test_a_change_falls_where_it_shows_less():
    assert skein_order([30, 90], [60, 60], [1.0, 0.5], flat) == [1, 0]


def test_many_skeins_go_from_shade_to_shade():
    shades = [0.0, 5.0, 1.0, 4.0, 2.0, 3.0, 9.0, 8.0, 7.0, 6.0]
    assert len(shades) > EXACTLY
    found = skein_order([50] * 10, [500], [1.0], by_shade(shades))
    assert [shades[one] for one in found] == sorted(shades)


def test_nothing_to_order():
    assert skein_order([], [50], [1.0], flat) == []


def test_the_eye_rests_on_the_front():
    assert shows("front") > shows("back") > shows("sleeve") > shows("band")
    assert shows("") == shows("piece")
