"""Branching on "this part takes this kind of yarn": one side it must, on the other it may not."""

from dataclasses import dataclass, replace

from app.planning.solve.problem import Part, Problem
from app.planning.solve.program import Program, Relaxed

WHOLE = 1e-6


@dataclass(frozen=True, slots=True, order=True)
class Node:
    """What is left to search: the least an answer in it can cost, and the kinds still allowed."""

    bound: float
    number: int
    problem: Problem


def branches(problem: Problem, program: Program, relaxed: Relaxed) -> tuple[Problem, ...]:
    """The problem in two, on the part and kind the shares are most undecided about; none where
    each part has its kind."""
    shares = kind_shares(program, relaxed)
    open_pairs = [pair for pair, share in shares.items() if WHOLE < share < 1 - WHOLE]
    if not open_pairs:
        return ()
    j, kind = min(
        open_pairs,
        key=lambda pair: (round(abs(shares[pair] - 0.5), 6), -problem.parts[pair[0]].need, pair),
    )
    unlike = problem.parts[j].unlike
    only = tuple(cost if k == kind else None for k, cost in enumerate(unlike))
    without = tuple(None if k == kind else cost for k, cost in enumerate(unlike))
    return _with(problem, j, only), _with(problem, j, without)


def kind_shares(program: Program, relaxed: Relaxed) -> dict[tuple[int, int], float]:
    """How far each part is knit in each kind, as the shares of the groups have it."""
    found: dict[tuple[int, int], float] = {}
    for group, share in zip(program.groups, relaxed.shares, strict=False):
        if share > WHOLE:
            for j in group.parts:
                found[j, group.kind] = found.get((j, group.kind), 0.0) + share
    return found


def _with(problem: Problem, j: int, unlike: tuple[float | None, ...]) -> Problem:
    part = problem.parts[j]
    changed = Part(part.name, part.need, unlike)
    parts = (*problem.parts[:j], changed, *problem.parts[j + 1 :])
    return replace(problem, parts=parts)
