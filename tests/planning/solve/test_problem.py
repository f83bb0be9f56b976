"""What a division into groups costs, by hand."""

import pytest

from app.planning.solve.problem import (
    Group,
    Kind,
    Part,
    Prices,
    Problem,
    Skein,
    Tally,
    faults,
    grams,
    left,
    price,
    tally,
    trimmed,
    value,
)

PRICES = Prices(join=1, cut=2, scrap=1.5, scrap_below=10, miss=100, lack=300)
PROBLEM = Problem(
    parts=(Part("body", 200, (0.0, 3.0)), Part("sleeves", 90, (0.0, None))),
    skeins=(Skein("A-1", "a", 120), Skein("A-2", "a", 95), Skein("B-1", "b", 205)),
    kinds=(Kind(("a",), 0, 0.5), Kind(("b",))),
    fleeces=(10.0,),
    prices=PRICES,
)


@pytest.mark.parametrize(
    ("group", "told", "cost"),
    [
        (Group(0, (0,), (0, 1)), Tally(1, 0, 0, 0), 1.0),
        (Group(1, (0,), (2,)), Tally(0, 0, 1, 0), 1.5 + 3.0),
        (Group(0, (1,), (1,)), Tally(0, 0, 1, 0), 1.5),
        (Group(0, (1,), (0,)), Tally(0, 0, 0, 0), 0.0),
        (Group(0, (0, 1), (0, 1)), Tally(2, 1, 0, 75), 2 + 2 + 7500),
        (Group(0, (1,), ()), Tally(0, 0, 0, 90), 9000.0),
    ],
)
def test_a_group_is_paid_for_what_it_asks_of_the_knitter(group, told, cost):
    assert tally(PROBLEM, (group,)) == told
    assert price(PROBLEM, group) == cost


def test_wool_no_fleece_can_give_is_paid_for_by_the_gram():
    short = (Group(0, (0, 1), (0, 1)),)
    assert grams(PROBLEM, short) == [37.5]
    assert value(PROBLEM, short) == 2 + 2 + 7500 + 27.5 * 300


def test_a_yarn_from_no_fleece_is_bought():
    assert grams(PROBLEM, (Group(1, (0,), ()),)) == [0.0]


def test_what_is_left_may_be_less_than_nothing():
    assert left(PROBLEM, Group(0, (0,), (0,))) == -80
    assert left(PROBLEM, Group(1, (0,), (2,))) == 5


def test_a_skein_that_is_not_needed_is_put_back_the_largest_first():
    assert trimmed(PROBLEM, Group(0, (1,), (0, 1))) == Group(0, (1,), (1,))
    assert trimmed(PROBLEM, Group(0, (0,), (0, 1))) == Group(0, (0,), (0, 1))


@pytest.mark.parametrize(
    ("groups", "wrong"),
    [
        ((Group(0, (0,), (0, 1)), Group(0, (1,), ())), []),
        ((Group(0, (0,), (0, 1)),), ["parts not placed once each"]),
        ((Group(0, (0,), (0, 1)), Group(0, (1,), (1,))), ["a skein is used twice"]),
        ((Group(0, (0,), ()), Group(1, (1,), ())), ["a group that may not be"]),
        ((Group(0, (0,), (2,)), Group(0, (1,), ())), ["a group that may not be"]),
        ((Group(0, (0,), ()), Group(0, (1,), (0, 1))), ["a group that may not be"]),
    ],
)
def test_what_is_wrong_with_a_division_is_told(groups, wrong):
    assert faults(PROBLEM, groups) == wrong
