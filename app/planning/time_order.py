"""In which order to do the work, so that a garment has its wool as soon as may be.

One pair of hands is one machine. Taking what is wanted first first makes the greatest delay as
small as it can be (Jackson 1955). Among all orders with no more delay than that, giving the last
place to the longest work that may stand there makes the garments have their wool soonest, taken
together (Smith 1956).
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import inf

DUST = 1e-9


@dataclass(frozen=True, slots=True)
class Work:
    """Something to be done: how long it takes, and when it is due, in one unit from now."""

    name: str
    length: float
    due: float = inf


def soonest(works: Sequence[Work]) -> tuple[Work, ...]:
    """The works in the order to do them; those that are equal keep their order."""
    late = max(0.0, greatest_delay(sorted(works, key=lambda one: one.due)))
    left, last = list(works), []
    end = sum(one.length for one in works)
    while left:
        may = [i for i, one in enumerate(left) if one.due + late >= end - DUST]
        chosen = max(may, key=lambda i: (left[i].length, i))
        one = left.pop(chosen)
        last.append(one)
        end -= one.length
    return tuple(reversed(last))


def greatest_delay(works: Sequence[Work]) -> float:
    """How late the latest of works is done in that order; below zero if none is late at all."""
    done, delay = 0.0, -inf
    for one in works:
        done += one.length
        delay = max(delay, done - one.due)
    return delay
