"""A search in its course: a first answer and its bound, repair, proof by listing, branching."""

from collections.abc import Callable, Sequence
from heapq import heappop, heappush
from random import Random

from app.planning.solve.branch import Node, branches
from app.planning.solve.enumerate import groups_within
from app.planning.solve.greedy import greedy
from app.planning.solve.problem import Group, Problem, faults, may_stand, tally, value
from app.planning.solve.program import Program, reduced
from app.planning.solve.relax import Bounded, relax
from app.planning.solve.repair import Repair
from app.planning.solve.solved import SAME, Effort, Solved, Work, reaches
from app.planning.solve.tidy import tidied
from app.planning.solve.whole import choose

FIRST_ROUNDS, FIRST_TRIES = 5, 60
"""A short repair before the bound is sought, for its groups: with them it is found much sooner.
Its answer is let go of, since the worths it went by are rough."""

PARTS = 12
"""So many parts have the effort as it is told; twice as many, twice the tries and offers."""

WEAK = 2.0
"""A first answer that costs so many times the bound is chosen anew among the groups known, which
takes as long as the tries of repair that are spared for it."""

PROVING = 1000
"""The most nodes of choosing whole groups out of a list of all that matter."""

Watch = Callable[[Solved], None]


class Search:
    """The best division so far, and what is left to search: open nodes, and the least bound of
    those that could be neither closed nor split."""

    def __init__(self, problem: Problem, effort: Effort) -> None:
        self.problem, self.effort = problem, effort
        self.program = Program(problem)
        self.larger = max(1, len(problem.parts) // PARTS)
        self.best = greedy(problem)
        self.best_value = value(problem, self.best)
        self.open: list[Node] = []
        self.stuck = self.best_value
        self.rounds = self.tries = self.nodes = self.splits = 0

    def begin(self, pool: Sequence[Group], start: Sequence[Group]) -> None:
        """A first answer, the bound beside it, and as much repair as the effort allows."""
        if start and not faults(self.problem, tuple(start)):
            self._take(tuple(sorted(start)))
        self.program.add(self.best)
        self.program.add(one for one in pool if may_stand(self.problem, one))
        self._repaired(
            relax(self.program, self.problem, FIRST_ROUNDS), min(FIRST_TRIES, self.effort.tries)
        )
        root = self._relax(self.problem)
        if weak := self.best_value > WEAK * root.bound:
            self._choose_known(root)
        larger = 1 if weak else self.larger
        self._take(self._repaired(root, larger * self.effort.tries))
        self._settle(self.problem, root, root.bound, chosen=weak)

    def branch(self, watch: Watch | None) -> None:
        """Split what is open, the least bound first, until it is proven or the nodes are spent."""
        while self.open and self.nodes < self.effort.nodes:
            node = heappop(self.open)
            if reaches(node.bound, self.best_value):
                break
            self.nodes += 1
            bounded = self._relax(node.problem)
            self._settle(node.problem, bounded, max(node.bound, bounded.bound))
            if watch:
                watch(self.solved())

    def solved(self) -> Solved:
        """The state of the search as an answer."""
        bounds = [one.bound for one in self.open]
        return Solved(
            tidied(self.problem, self.best),
            self.best_value,
            min(self.best_value, self.stuck, *bounds),
            tally(self.problem, self.best),
            Work(len(self.program.groups), self.rounds, self.tries, self.nodes),
            tuple(self.program.groups),
        )

    def _repaired(self, bounded: Bounded, tries: int) -> tuple[Group, ...]:
        repair = Repair(self.problem, bounded.relaxed.worths, Random(0))
        found = repair.improve(self.best, tries, bounded.bound)
        self.tries += repair.tries
        self.program.add(repair.seen)
        return found

    def _relax(self, problem: Problem) -> Bounded:
        bounded = relax(self.program, problem, self.effort.rounds)
        self.rounds += bounded.rounds
        return bounded

    def _settle(
        self, problem: Problem, bounded: Bounded, bound: float, chosen: bool = False
    ) -> None:
        """Close a node by proof where all groups that matter can be listed, else split it; where
        whole groups were `chosen` for it already, that is not done again."""
        if reaches(bound, self.best_value) or self._listed(problem, bounded):
            return
        if not chosen:
            self._choose_known(bounded)
        halves = branches(problem, self.program, bounded.relaxed)
        for half in halves:
            self.splits += 1
            heappush(self.open, Node(bound, self.splits, half))
        if not halves:
            self.stuck = min(self.stuck, bound)

    def _listed(self, problem: Problem, bounded: Bounded) -> bool:
        gap = self.best_value - bounded.bound
        found = groups_within(problem, bounded.relaxed.worths, gap, self.effort.listed)
        return found is not None and self._choose(found, PROVING)

    def _choose_known(self, bounded: Bounded) -> None:
        gap, worths = self.best_value - bounded.bound, bounded.relaxed.worths
        costs = {one: reduced(self.problem, one, worths) for one in self.program.groups}
        near = sorted((cost, one) for one, cost in costs.items() if cost <= gap)
        self._choose(
            [one for _, one in near[: self.larger * self.effort.offered]], self.effort.choosing
        )

    def _choose(self, groups: Sequence[Group], nodes: int) -> bool:
        """Whether it is proven that these groups give nothing better than what is then best."""
        offered = list(dict.fromkeys([*groups, *self.best]))
        chosen = choose(self.problem, offered, nodes)
        if not faults(self.problem, chosen.groups):
            self._take(chosen.groups)
        return chosen.proven

    def _take(self, groups: tuple[Group, ...]) -> None:
        found = value(self.problem, groups)
        if found < self.best_value - SAME:
            self.best, self.best_value = groups, found
            self.program.add(groups)
