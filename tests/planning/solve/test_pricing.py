"""The knapsacks against trying everything."""

from itertools import combinations, product
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from app.planning.solve.enumerate import groups_within
from app.planning.solve.knapsack import knapsack
from app.planning.solve.pricing import Worths, best_groups
from app.planning.solve.problem import Group, may_stand
from app.planning.solve.program import reduced
from tests.planning.solve.test_reference import small

pieces = st.lists(st.tuples(st.integers(1, 12), st.floats(-5, 5)), max_size=6)


@pytest.mark.property
@given(pieces, st.integers(0, 40))
def test_each_length_is_reached_at_the_least_cost(things, reach):
    sizes, costs = [size for size, _ in things], [cost for _, cost in things]
    table = knapsack(sizes, costs, reach)
    for length in range(reach + 1):
        ways = [
            sum(cost for (_, cost), is_in in zip(things, some, strict=True) if is_in)
            for some in product((False, True), repeat=len(things))
            if sum(size for (size, _), is_in in zip(things, some, strict=True) if is_in) == length
        ]
        assert table.best[length] == pytest.approx(min(ways, default=float("inf")))
        if ways:
            chosen = table.pieces(length)
            assert sum(sizes[place] for place in chosen) == length
            assert sum(costs[place] for place in chosen) == pytest.approx(table.best[length])


def test_of_pieces_that_cost_the_same_the_first_is_taken():
    assert knapsack([3, 3, 3], [1.0, 1.0, 1.0], 3).pieces(3) == [0]


def every_group(problem):
    def subsets(things):
        return [some for n in range(len(things) + 1) for some in combinations(things, n)]

    groups = (
        Group(kind, parts, skeins)
        for kind in range(len(problem.kinds))
        for parts in subsets(problem.parts_of(kind))
        for skeins in subsets(problem.skeins_of(kind))
        if parts
    )
    return [one for one in groups if may_stand(problem, one)]


def some_worths(problem, seed):
    chance = Random(seed)
    return Worths(
        [chance.uniform(0, 60) for _ in problem.parts],
        [chance.choice((0.0, chance.uniform(0, 5))) for _ in problem.skeins],
        [chance.uniform(0, 2) for _ in problem.fleeces],
    )


@pytest.mark.property
@settings(max_examples=60, deadline=None)
@given(st.integers(2000, 3000))
def test_no_group_is_worth_more_than_the_knapsacks_say(seed):
    problem = small(seed)
    worths = some_worths(problem, seed)
    everyone = range(len(problem.parts)), range(len(problem.skeins))
    for kind in range(len(problem.kinds)):
        own = [one for one in every_group(problem) if one.kind == kind]
        found = best_groups(problem, kind, worths, *everyone)
        assert bool(found) == bool(own)
        if own:
            least = min(reduced(problem, one, worths) for one in own)
            assert found[0].reduced <= least + 1e-6
            exact = [one for one in found if reduced(problem, one.group, worths) == least]
            assert found[0].reduced < least - 1e-6 or exact or least >= found[0].reduced


def test_only_the_parts_and_skeins_offered_are_in_a_group():
    problem = small(7)
    worths = some_worths(problem, 7)
    for kind in range(len(problem.kinds)):
        for one in best_groups(problem, kind, worths, {0}, set()):
            assert one.group.parts == (0,)
            assert one.group.skeins == ()


@pytest.mark.property
@settings(max_examples=60, deadline=None)
@given(st.integers(2000, 3000), st.floats(0, 80))
def test_every_group_within_the_gap_is_listed_unless_a_skein_less_serves_as_well(seed, gap):
    problem = small(seed)
    worths = some_worths(problem, seed)
    found = groups_within(problem, worths, gap, 100_000)
    within = {one for one in every_group(problem) if reduced(problem, one, worths) <= gap - 1e-6}
    assert len(found) == len(set(found))
    assert all(reduced(problem, one, worths) <= gap + 1e-6 for one in found)
    for missing in within - set(found):
        costs = reduced(problem, missing, worths)
        fewer = [
            Group(missing.kind, missing.parts, tuple(s for s in missing.skeins if s != one))
            for one in missing.skeins
        ]
        assert any(reduced(problem, one, worths) <= costs + 1e-6 for one in fewer)


def test_a_list_that_grows_too_long_is_given_up():
    problem = small(7)
    assert groups_within(problem, some_worths(problem, 7), 1e9, 3) is None
