"""The groups of one kind that are worth most at given worths of parts and skeins.

The parts are a knapsack, the skeins another; a third sum over both lengths finds what is left or
still to be made.
"""

from collections.abc import Collection, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from app.planning.solve.knapsack import knapsack
from app.planning.solve.problem import Group, Problem, trimmed

if TYPE_CHECKING:
    from numpy.typing import NDArray

LENGTHS = 8
"""Groups are sought in so many ranges of length, so that one round brings several."""


@dataclass(frozen=True, slots=True)
class Worths:
    """What each part is worth, what taking each skein costs, and each gram of each fleece."""

    parts: Sequence[float]
    skeins: Sequence[float]
    fleeces: Sequence[float]


@dataclass(frozen=True, slots=True)
class Priced:
    """A group, and at least what it costs less what its parts are worth: exactly that, but where
    the cheapest skeins are more than it needs."""

    group: Group
    reduced: float


def best_groups(
    problem: Problem,
    kind: int,
    worths: Worths,
    parts: Collection[int],
    skeins: Collection[int],
    count: int = LENGTHS,
) -> list[Priced]:
    """The best group of a kind in each of `count` ranges of length, the best of all first.

    Only those parts and skeins may be in it. Empty where no part may be knit in the kind.
    """
    may_parts = [j for j in problem.parts_of(kind) if j in parts]
    may_skeins = [i for i in problem.skeins_of(kind) if i in skeins]
    if not may_parts:
        return []
    return Pricing(problem, kind, worths, may_parts, may_skeins).found(count)


class Pricing:
    """One kind at given worths: costs of its parts and skeins, and the least that skeins, a
    remnant and what is made cost for each length of parts (`supply`)."""

    def __init__(
        self, problem: Problem, kind: int, worths: Worths, parts: list[int], skeins: list[int]
    ) -> None:
        self.problem, self.kind, prices = problem, kind, problem.prices
        self.part_ids, self.skein_ids = parts, skeins
        self.needs = [problem.parts[j].need for j in parts]
        unlike = [problem.parts[j].unlike[kind] or 0.0 for j in parts]
        self.part_costs = [
            prices.cut + one - worths.parts[j] for j, one in zip(parts, unlike, strict=True)
        ]
        self.metres = [problem.skeins[i].metres for i in skeins]
        self.skein_costs = [prices.join + worths.skeins[i] for i in skeins]
        useful = sum(self.needs) + max(1, prices.scrap_below) + max(self.metres, default=0)
        self.reach = min(sum(self.metres), useful)
        self.parts = knapsack(self.needs, self.part_costs, sum(self.needs))
        self.skeins = knapsack(self.metres, self.skein_costs, self.reach)
        self.make = _make_a_metre(problem, kind, worths)
        self.supply = self._supply()

    def found(self, count: int) -> list[Priced]:
        """The best group in each of so many ranges of length."""
        import numpy as np

        whole = self.parts.best + self.supply - self.problem.prices.join - self.problem.prices.cut
        ranges = np.array_split(np.arange(1, len(whole)), min(count, len(whole) - 1))
        lengths = [int(one[int(np.argmin(whole[one]))]) for one in ranges]
        told = [Priced(self._group(n), float(whole[n])) for n in lengths if np.isfinite(whole[n])]
        return sorted(told, key=lambda one: (one.reduced, one.group))

    def _supply(self) -> "NDArray[Any]":
        import numpy as np

        prices, reach = self.problem.prices, len(self.parts.best) - 1
        ample_from = max(1, prices.scrap_below)
        held = np.full(reach + ample_from + 1, np.inf)
        skeins = self.skeins.best
        held[: len(skeins)] = skeins[: len(held)]
        held[-1] = skeins[len(held) - 1 :].min(initial=np.inf)
        at_least = np.minimum.accumulate(held[::-1])[::-1]
        lengths, exact = np.arange(reach + 1), held[: reach + 1]
        short = np.minimum.accumulate(exact - self.make * lengths)
        made = np.full(reach + 1, np.inf)
        made[1:] = short[:-1] + self.make * lengths[1:] + prices.join
        scrap, ample = at_least[1 : reach + 2] + prices.scrap, at_least[ample_from:]
        least: NDArray[Any] = np.minimum(np.minimum(exact, scrap), np.minimum(ample, made))
        return least

    def beyond(self, length: int) -> "NDArray[Any]":
        """For each length of skeins, what a remnant or what is made costs beside them."""
        import numpy as np

        prices = self.problem.prices
        over = np.arange(self.reach + 1) - length
        scrap = np.where((over > 0) & (over < prices.scrap_below), prices.scrap, 0.0)
        cost: NDArray[Any] = np.where(over < 0, prices.join - self.make * over, scrap)
        return cost

    def _group(self, length: int) -> Group:
        import numpy as np

        held = int(np.argmin(self.skeins.best + self.beyond(length)))
        parts = [self.part_ids[place] for place in self.parts.pieces(length)]
        skeins = [self.skein_ids[place] for place in self.skeins.pieces(held)]
        return trimmed(self.problem, Group(self.kind, tuple(parts), tuple(skeins)))


def _make_a_metre(problem: Problem, kind: int, worths: Worths) -> float:
    one = problem.kinds[kind]
    if one.fleece is None:
        return problem.prices.miss
    return problem.prices.miss + one.grams_a_metre * worths.fleeces[one.fleece]
