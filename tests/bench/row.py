"""A row of the table, and medians of interleaved rounds."""

from collections.abc import Callable
from dataclasses import dataclass
from statistics import median
from time import perf_counter

SLACK = 1.10
"""A shared machine strays; a bar counts as held up to a tenth above it."""


@dataclass(frozen=True, slots=True)
class Row:
    """`measured` against `floor` in `unit`; the bar is a ratio where there is a floor."""

    what: str
    measured: float
    unit: str
    bar: float
    floor: float | None = None
    note: str = ""
    slack: float = SLACK

    @property
    def value(self) -> float:
        return self.measured if self.floor is None else self.measured / self.floor

    @property
    def held(self) -> bool:
        return self.value <= self.bar * self.slack


def timed(act: Callable[[], object]) -> float:
    """Milliseconds one call takes."""
    begun = perf_counter()
    act()
    return (perf_counter() - begun) * 1000


def interleaved(rounds: int, each: int, *acts: Callable[[], object]) -> list[float]:
    """For each act the median over `rounds` of the median of `each` calls in a row, in ms."""
    found: list[list[float]] = [[] for _ in acts]
    for act in acts:
        act()
    for _ in range(rounds):
        for act, times in zip(acts, found, strict=True):
            times.append(median(timed(act) for _ in range(each)))
    return [median(times) for times in found]
