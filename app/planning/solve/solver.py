"""The whole search: a first answer and its bound, repair, choosing whole groups, branching.

Everything is counted in work, never timed, so the same problem has the same answer.
"""

from collections.abc import Sequence

from app.planning.solve.problem import Group, Problem, Tally
from app.planning.solve.search import Search, Watch
from app.planning.solve.solved import Effort, Solved, Work


def solve(
    problem: Problem,
    effort: Effort | None = None,
    pool: Sequence[Group] = (),
    start: Sequence[Group] = (),
    watch: Watch | None = None,
) -> Solved:
    """The best division found within the effort, never worse than the greedy one or `start`.

    `watch` is told of the state after each node. A problem without parts has nothing to divide.
    """
    if not problem.parts:
        return Solved((), 0.0, 0.0, Tally(0, 0, 0, 0), Work())
    search = Search(problem, effort or Effort())
    search.begin(pool, start)
    search.branch(watch)
    return search.solved()
