"""Parts knit in pairs: two skeins as long as each other go one into each piece."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from app.planning.assign_problem import Asked
from app.planning.solve.problem import Problem

ALIKE = 0.05
"""Two skeins are a couple where their lengths differ by no more than this share (practice)."""


@dataclass(frozen=True, slots=True)
class Piece:
    """Metres of a skein for a unit, by their places in what was asked; `extra_m` of them are only
    there to be as sure as was asked."""

    unit: int
    skein: int
    m: float
    extra_m: float


def couples(problem: Problem, pieces: Sequence[Piece], unit: int) -> Iterator[tuple[Piece, Piece]]:
    """The pieces of a unit whose skeins are alike in length and go nowhere else, two by two."""
    alone = [one for one in pieces if sum(each.skein == one.skein for each in pieces) == 1]
    rest = [one for one in alone if one.unit == unit]
    rest.sort(key=lambda one: (-problem.skeins[one.skein].metres, one.skein))
    while len(rest) > 1:
        first, second = rest[0], rest[1]
        longer, shorter = (problem.skeins[one.skein].metres for one in (first, second))
        if longer - shorter <= ALIKE * longer:
            yield first, second
            rest = rest[2:]
        else:
            rest = rest[1:]


def evened(asked: Asked, problem: Problem, pieces: Sequence[Piece]) -> list[Piece]:
    """The pieces, those of a couple made equal as far as the shorter skein goes."""
    changed: dict[Piece, Piece] = {}
    for unit in dict.fromkeys(one.unit for one in pieces):
        if asked.units[unit].part.part.copies == 2:
            for one, other in couples(problem, pieces, unit):
                m, extra_m = (one.m + other.m) / 2, (one.extra_m + other.extra_m) / 2
                if m <= min(problem.skeins[each.skein].metres for each in (one, other)):
                    changed[one] = replace(one, m=m, extra_m=extra_m)
                    changed[other] = replace(other, m=m, extra_m=extra_m)
    return [changed.get(one, one) for one in pieces]
