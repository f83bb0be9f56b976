"""Rows in words: what follows again and again is told once, with how many times."""

from collections.abc import Hashable, Iterable
from dataclasses import dataclass
from itertools import groupby
from typing import Generic, TypeVar

Yarn = TypeVar("Yarn", bound=Hashable)

LONGEST = 6
"""Changes in what is told as one repeat, at most: more than that nobody keeps in her head."""


@dataclass(frozen=True, slots=True)
class Repeat(Generic[Yarn]):
    """So many rows of one yarn, then of the next, and all of it so many times over; `first` and
    `last` are the rows it covers."""

    first: int
    last: int
    rows: tuple[tuple[int, Yarn], ...]
    times: int = 1


def told(rows: Iterable[Yarn]) -> tuple[Repeat[Yarn], ...]:
    """The yarn of each row, from the first, as repeats."""
    runs = [(sum(1 for _ in alike), yarn) for yarn, alike in groupby(rows)]
    found, at, row = list[Repeat[Yarn]](), 0, 1
    while at < len(runs):
        period, times = _best(runs, at)
        once = tuple(runs[at : at + period])
        last = row + times * sum(count for count, _ in once) - 1
        found.append(Repeat(row, last, once, times))
        at, row = at + period * times, last + 1
    return tuple(found)


def _best(runs: list[tuple[int, Yarn]], at: int) -> tuple[int, int]:
    """The repeat from here that covers most changes, the shortest of those that cover as many; one
    stretch of one yarn where nothing is repeated."""
    best = 1, 1
    for period in range(2, LONGEST + 1):
        times = 1
        while runs[at + times * period : at + (times + 1) * period] == runs[at : at + period]:
            times += 1
        if times > 1 and period * times > best[0] * best[1]:
            best = period, times
    return best
