"""The least that any choice of pieces costs, for every length they can add up to exactly."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from numpy.typing import NDArray


@dataclass(frozen=True, slots=True)
class Table:
    """`best[t]` is the least cost of pieces of t metres together (infinite where none are);
    `taken[i][t]` tells whether piece i is among the first i + 1 that reach t at that cost."""

    sizes: Sequence[int]
    best: "NDArray[Any]"
    taken: "NDArray[Any]"

    def pieces(self, total: int) -> list[int]:
        """The places of the pieces that add up to `total` at the least cost, in order."""
        found = []
        for place in range(len(self.sizes) - 1, -1, -1):
            if self.taken[place][total]:
                found.append(place)
                total -= self.sizes[place]
        return found[::-1]


def knapsack(sizes: Sequence[int], costs: Sequence[float], reach: int) -> Table:
    """All totals up to `reach`; each piece once, sizes of one metre and more. Of choices that cost
    the same, the pieces that come first."""
    import numpy as np

    best = np.full(reach + 1, np.inf)
    best[0] = 0.0
    taken = np.zeros((len(sizes), reach + 1), dtype=bool)
    for place, (size, cost) in enumerate(zip(sizes, costs, strict=True)):
        if size <= reach:
            with_it = best[: reach + 1 - size] + cost
            better = with_it < best[size:]
            taken[place, size:] = better
            best[size:] = np.where(better, with_it, best[size:])
    return Table(sizes, best, taken)
