"""Column generation: groups worth having are brought in until none is left.

Then the program's value is a bound: no division into groups costs less.
"""

from dataclasses import dataclass

from app.planning.solve.pricing import Priced, Worths, best_groups
from app.planning.solve.problem import Group, Problem
from app.planning.solve.program import Program, Relaxed

WORTH_HAVING = 1e-6
"""A group must be worth this share of the value in hand, or it is not brought in."""


@dataclass(frozen=True, slots=True)
class Bounded:
    """The program solved in shares, with the bound it proves and the rounds it took."""

    relaxed: Relaxed
    bound: float
    rounds: int


def relax(program: Program, problem: Problem, rounds: int) -> Bounded:
    """Bring groups into the program until none is worth having, or so many rounds are done.

    `problem` is the program's own, or one in which fewer kinds are allowed. Cut short, the bound is
    what as many of the best group as there are parts could still save.
    """
    program.allow([_allowed(problem, one) for one in program.groups])
    done, new = 0, True
    while new and done < rounds:
        done += 1
        found = program.relaxed()
        offers = _offers(problem, found.worths)
        least = WORTH_HAVING * max(1.0, abs(found.value))
        wanted = [one.group for one in offers if one.reduced < -least]
        new = program.add(wanted) > 0
    saved = min((one.reduced for one in offers), default=0.0)
    return Bounded(found, found.value + min(0.0, saved) * len(problem.parts), done)


def _offers(problem: Problem, worths: Worths) -> list[Priced]:
    parts, skeins = range(len(problem.parts)), range(len(problem.skeins))
    return [
        one
        for kind in range(len(problem.kinds))
        for one in best_groups(problem, kind, worths, parts, skeins)
    ]


def _allowed(problem: Problem, group: Group) -> bool:
    return all(problem.parts[j].unlike[group.kind] is not None for j in group.parts)
