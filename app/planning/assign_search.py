"""Looking longer for a better division: more repair, branching, and a proof if there is one."""

from collections.abc import Callable
from dataclasses import dataclass, replace

from app.book.book import Book
from app.planning.assign import propose
from app.planning.assign_problem import ask
from app.planning.reckoning import reckon
from app.planning.solve.problem import Group, Problem
from app.planning.solve.solved import Effort, Solved
from app.planning.solve.solver import solve

DEEP = Effort(tries=2000, nodes=200, listed=20_000, offered=400, choosing=50)
"""What is done when the maker asks to look for longer."""


@dataclass(frozen=True, slots=True)
class Told:
    """What a search has found so far: an answer to a problem with needs larger by a share.

    The pool of the answer is left out, since it is sent from process to process.
    """

    share: float
    problem: Problem
    solved: Solved
    done: bool


@dataclass(frozen=True, slots=True)
class Begun:
    """Where a search goes on from: an answer to the problem with needs larger by `share`."""

    share: float
    groups: tuple[Group, ...]


def search_on(
    tell: Callable[[Told], None], book: Book, plan_id: str, begun: Begun | None, effort: Effort
) -> None:
    """Look on from an answer, or find a first one and look on from that; `tell` hears of the first,
    of each node and of the end. `book` has nothing proposed for the plan."""
    reckoning = reckon(book)
    if begun is None:
        first = propose(book, reckoning, plan_id)
        tell(Told(first.share, first.problem, replace(first.solved, pool=()), False))
        begun, pool = Begun(first.share, first.solved.groups), first.solved.pool
    else:
        pool = ()
    problem, share = ask(book, reckoning, plan_id).surer(begun.share), begun.share

    def watch(solved: Solved) -> None:
        tell(Told(share, problem, replace(solved, pool=()), False))

    solved = solve(problem, effort, pool, begun.groups, watch)
    tell(Told(share, problem, replace(solved, pool=()), True))
