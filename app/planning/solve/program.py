"""The linear program over groups: each part in one, each skein in one at most, no fleece overdrawn.

HiGHS prints its banner when the usual class is made; the class beneath it prints nothing.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Any

from app.planning.solve.pricing import Worths
from app.planning.solve.problem import Group, Problem, grams, price

INFINITE = 1e30
"""Larger than any bound: none."""


@dataclass(frozen=True, slots=True)
class Relaxed:
    """The least cost if groups could be taken in parts: `shares` of each group, in their order."""

    value: float
    shares: Sequence[float]
    worths: Worths


def silent() -> Any:
    """A HiGHS that prints nothing and always does the same."""
    from highspy import _core

    solver = _core._Highs()
    for name, setting in (("output_flag", False), ("threads", 1), ("random_seed", 0)):
        solver.setOptionValue(name, setting)
    return solver


class Program:
    """Rows are parts, then skeins, then fleeces; columns first what each fleece lacks (in g), then
    what no group does for a part, then the groups in the order in which they came."""

    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        self.groups: list[Group] = []
        self.prices: list[float] = []
        self._known: set[Group] = set()
        self._solver = silent()
        parts, skeins, fleeces = len(problem.parts), len(problem.skeins), problem.fleeces
        lows = [1.0] * parts + [-INFINITE] * (skeins + len(fleeces))
        highs = [1.0] * (parts + skeins) + list(fleeces)
        for low, high in zip(lows, highs, strict=True):
            self._solver.addRow(low, high, 0, [], [])
        for place in range(len(fleeces)):
            self._column(problem.prices.lack, [parts + skeins + place], [-1.0])
        for j, part in enumerate(problem.parts):
            self._column(2 * part.need * (problem.prices.miss + problem.prices.lack), [j], [1.0])
        self._before = len(fleeces) + parts

    def add(self, groups: Iterable[Group]) -> int:
        """Take in groups that are not known yet; answers how many were new."""
        new = [one for one in dict.fromkeys(groups) if one not in self._known]
        for one in new:
            rows, numbers = column(self.problem, one)
            self.groups.append(one)
            self.prices.append(price(self.problem, one))
            self._known.add(one)
            self._column(self.prices[-1], rows, numbers)
        return len(new)

    def allow(self, allowed: Sequence[bool]) -> None:
        """Only those groups may be taken, told in the order in which they came."""
        count = len(self.groups)
        places = [self._before + place for place in range(count)]
        highs = [INFINITE if one else 0.0 for one in allowed]
        self._solver.changeColsBounds(count, places, [0.0] * count, highs)

    def relaxed(self) -> Relaxed:
        """The program solved with shares of groups."""
        self._solver.run()
        found = self._solver.getSolution()
        duals = list(found.row_dual)
        parts, skeins = len(self.problem.parts), len(self.problem.skeins)
        worths = Worths(
            duals[:parts],
            [max(0.0, -one) for one in duals[parts : parts + skeins]],
            [max(0.0, -one) for one in duals[parts + skeins :]],
        )
        value = self._solver.getInfo().objective_function_value
        return Relaxed(value, list(found.col_value)[self._before :], worths)

    def _column(self, cost: float, rows: list[int], numbers: list[float]) -> None:
        self._solver.addCol(cost, 0.0, INFINITE, len(rows), rows, numbers)


def column(problem: Problem, group: Group) -> tuple[list[int], list[float]]:
    """The rows a group stands in and its number in each."""
    parts, skeins = len(problem.parts), len(problem.skeins)
    rows = [*group.parts, *(parts + i for i in group.skeins)]
    numbers = [1.0] * len(rows)
    for place, used in enumerate(grams(problem, (group,))):
        if used > 0:
            rows.append(parts + skeins + place)
            numbers.append(used)
    return rows, numbers


def reduced(problem: Problem, group: Group, worths: Worths) -> float:
    """What a group costs less what its parts are worth, with what its skeins and fleeces cost."""
    rows, numbers = column(problem, group)
    skeins, fleeces = ([-one for one in some] for some in (worths.skeins, worths.fleeces))
    duals = [*worths.parts, *skeins, *fleeces]
    worth = sum(duals[row] * number for row, number in zip(rows, numbers, strict=True))
    return price(problem, group) - worth
