"""Skeins divided among parts on seeded shelves: value, bound, work, and greedy beside it.

Seconds are of the processor, since a shared machine makes any other clock stray. The best known is
what 4,000 to 5,000 tries of repair, and branching, found once.
"""

from collections.abc import Iterator
from pathlib import Path
from statistics import median
from time import process_time

from app.planning.solve.greedy import greedy
from app.planning.solve.problem import Problem, value
from app.planning.solve.solved import Effort, Solved
from app.planning.solve.solver import solve
from tests.bench.row import Row
from tests.planning.solve.shelves import shelf

SMALL = [(seed, 9, 5, 2) for seed in range(10)]
MIDDLE = {
    (0, 60, 12, 4): 25.0,
    (1, 60, 12, 4): 365040.56,
    (2, 60, 12, 4): 29.0,
    (3, 60, 12, 4): 26.53,
    (4, 60, 12, 4): 32.62,
    (5, 60, 12, 4): 28.0,
    (6, 60, 12, 4): 29.0,
    (7, 60, 12, 4): 29.29,
    (8, 60, 12, 4): 32.72,
    (9, 60, 12, 4): 35.5,
}
LARGE = {
    (0, 200, 30, 8): 98.5,
    (1, 200, 30, 8): 114.62,
    (2, 200, 30, 8): 282122.72,
    (3, 200, 30, 8): 98.77,
    (4, 200, 30, 8): 121.7,
    (5, 200, 30, 8): 92.23,
}
LONGER = Effort(tries=1000, nodes=20, listed=3000)


def rows(_: Path, rounds: int) -> Iterator[Row]:
    """One row for each bar; more rounds look longer for the bound after a minute."""
    solve(shelf(0, 3, 2, 1))
    yield from _small()
    yield from _middle(rounds)
    yield from _large()


def _small() -> Iterator[Row]:
    found = [_solved(shelf(*size)) for size in SMALL]
    proven = sum(one.best_possible for one, _ in found)
    took = max(seconds for _, seconds in found)
    yield Row("9 skeins × 5 parts, slowest", took, "s", 1, note=f"{proven} of 10 proven the best")


def _middle(rounds: int) -> Iterator[Row]:
    found = {size: _solved(shelf(*size)) for size in MIDDLE}
    yield Row("60 skeins × 12 parts, slowest", _slowest(found), "s", 1, note=_work(found))
    over = sorted(_over(one.value, MIDDLE[size]) for size, (one, _) in found.items())
    yield Row("over the best known, 9 of 10", over[8], "%", 5, note=f"all ten {over[-1]:.1f} %")
    saved = median(_saved(shelf(*size), one) for size, (one, _) in found.items())
    note = f"median, {saved:.0f} % less than greedy costs"
    yield Row("greedy against the saving asked", 30 / max(saved, 0.1), "×", 1, note=note)
    gaps = [_gap(one) for one, _ in found.values()]
    yield Row("bound at once, widest", max(gaps), "%", 20, note=f"median {median(gaps):.1f} %")
    longer = [_gap(_longer(shelf(*size), one)) for size, (one, _) in list(found.items())[:rounds]]
    yield Row("bound after a longer look", max(longer), "%", 5, note=f"{LONGER.nodes} nodes")


def _large() -> Iterator[Row]:
    found = {size: _solved(shelf(*size)) for size in LARGE}
    yield Row("200 skeins × 30 parts, slowest", _slowest(found), "s", 2, note=_work(found))
    over = max(_over(one.value, LARGE[size]) for size, (one, _) in found.items())
    saved = median(_saved(shelf(*size), one) for size, (one, _) in found.items())
    yield Row("over the best known, worst", over, "%", 8, note=f"{saved:.0f} % less than greedy")


Found = dict[tuple[int, int, int, int], tuple[Solved, float]]


def _solved(problem: Problem) -> tuple[Solved, float]:
    begun = process_time()
    found = solve(problem)
    return found, process_time() - begun


def _longer(problem: Problem, first: Solved) -> Solved:
    return solve(problem, LONGER, first.pool, first.groups)


def _slowest(found: Found) -> float:
    return max(seconds for _, seconds in found.values())


def _work(found: Found) -> str:
    work = [one.work for one, _ in found.values()]
    groups, rounds = median(one.groups for one in work), median(one.rounds for one in work)
    return f"median {groups:.0f} groups, {rounds:.0f} rounds"


def _over(found: float, best: float) -> float:
    return 100 * (found / best - 1)


def _gap(found: Solved) -> float:
    return 100 * (1 - found.bound / found.value) if found.value else 0.0


def _saved(problem: Problem, found: Solved) -> float:
    return 100 * (1 - found.value / value(problem, greedy(problem)))
