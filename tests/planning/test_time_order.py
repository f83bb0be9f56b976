from itertools import accumulate, permutations
from math import inf

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.planning.time_order import Work, greatest_delay, soonest


def names(works):
    return "".join(one.name for one in soonest(works))


def test_nothing_to_do():
    assert soonest([]) == ()


def test_without_days_the_shortest_comes_first():
    assert names([Work("a", 9), Work("b", 2), Work("c", 4)]) == "bca"


def test_what_is_equal_keeps_its_order():
    assert names([Work("a", 2), Work("b", 2), Work("c", 2)]) == "abc"


def test_a_day_puts_the_long_one_first_only_as_far_as_it_must():
    """The long one is due at 10: one short one still fits before it, the shorter."""
    works = [Work("a", 7, 10), Work("b", 2), Work("c", 3)]
    assert names(works) == "bac"
    assert sum(accumulate(one.length for one in soonest(works))) == best(works)


def test_what_is_late_anyway_is_no_later_than_it_need_be():
    works = [Work("a", 7, 5), Work("b", 2, 20)]
    assert names(works) == "ab"
    assert greatest_delay(soonest(works)) == 2


def best(works):
    """The least sum of times among all orders with the least greatest delay."""
    orders = list(permutations(works))
    least = max(0.0, min(greatest_delay(one) for one in orders))
    good = [one for one in orders if greatest_delay(one) <= least + 1e-9]
    return min(sum(accumulate(work.length for work in one)) for one in good)


WORKS = st.lists(
    st.tuples(st.integers(1, 9), st.one_of(st.just(inf), st.integers(1, 30))),
    min_size=1,
    max_size=6,
)


@pytest.mark.property
@given(WORKS)
def test_no_order_is_sooner_without_being_later(drawn):
    """Every order of up to six works, tried out."""
    works = [Work(str(i), length, due) for i, (length, due) in enumerate(drawn)]
    found = soonest(works)
    assert sorted(found, key=lambda one: one.name) == works
    assert sum(accumulate(one.length for one in found)) == pytest.approx(best(works))
    early = sorted(works, key=lambda one: one.due)
    assert max(0.0, greatest_delay(found)) <= max(0.0, greatest_delay(early)) + 1e-9
