"""The least cost by trying every division into groups: independent of any solver."""

from functools import cache
from itertools import combinations

from app.planning.solve.problem import Group, Problem, grams, may_stand, price


def least(problem: Problem) -> float:
    """The least any division costs; for few parts and skeins only."""
    options = _options(problem)

    @cache
    def rest(parts: frozenset[int], skeins: frozenset[int], used: tuple[float, ...]) -> float:
        if not parts:
            lacks = zip(used, problem.fleeces, strict=True)
            return problem.prices.lack * sum(max(0.0, u - there) for u, there in lacks)
        first = min(parts)
        return min(
            cost
            + rest(
                parts - own,
                skeins - held,
                tuple(u + more for u, more in zip(used, asked, strict=True)),
            )
            for own, held, cost, asked in options
            if first in own and own <= parts and held <= skeins
        )

    return rest(
        frozenset(range(len(problem.parts))),
        frozenset(range(len(problem.skeins))),
        tuple(0.0 for _ in problem.fleeces),
    )


def _options(problem):
    """Every group there could be, as sets, with its price and the grams it asks of each fleece."""
    found = []
    for kind in range(len(problem.kinds)):
        for parts in _subsets(problem.parts_of(kind)):
            for skeins in _subsets(problem.skeins_of(kind)):
                group = Group(kind, parts, skeins)
                if parts and may_stand(problem, group):
                    asked = tuple(grams(problem, (group,)))
                    sets = frozenset(parts), frozenset(skeins)
                    found.append((*sets, price(problem, group), asked))
    return found


def _subsets(things):
    return [some for count in range(len(things) + 1) for some in combinations(things, count)]
