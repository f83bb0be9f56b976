"""The best division of free skeins over the parts of a plan, as sure as was asked.

One pure call: book and reckoning in, a proposal with its promises, its odds and its bound out.
"""

from dataclasses import dataclass, replace

from app.book.book import Book
from app.book.plan import Promise
from app.craft.odds import normal_quantile, whole_up
from app.planning.answers import GroupAnswer, Reckoning
from app.planning.assign_problem import Asked, ask
from app.planning.assign_promises import Choice, choices, promises
from app.planning.proposal import can_take_m
from app.planning.reckoning import reckon
from app.planning.solve.problem import Group, Problem, Tally, left
from app.planning.solve.solved import Effort, Solved
from app.planning.solve.solver import solve

SOLVES = 6
"""The most times a plan is solved to find how much larger its needs must be taken."""

ROUGH = 40
"""Tries at repair while that is being found."""

CLOSE = 0.01
"""How near the share added to the needs is found."""

LEAST_M = 0.5


@dataclass(frozen=True, slots=True)
class Proposal:
    """Promises in state "proposed" with what they cost against the least possible (`bound`).

    `share` is how much larger the needs were taken to be as sure as was asked, `odds` what the
    reckoning gives the plan with these promises, `tally` what it asks of the knitter.
    """

    promises: tuple[Promise, ...]
    choices: tuple[Choice, ...]
    solved: Solved
    share: float
    odds: float
    asked: Asked
    problem: Problem

    @property
    def value(self) -> float:
        return self.solved.value

    @property
    def bound(self) -> float:
        return self.solved.bound

    @property
    def best_possible(self) -> bool:
        """True where no other division costs less: for these prices and this sureness, in whole
        metres, with no yarns mixed but those that read as one."""
        return self.solved.best_possible

    @property
    def tally(self) -> Tally:
        return self.solved.tally

    @property
    def in_words(self) -> str:
        """How far the proposal is from the best there can be."""
        if self.best_possible:
            return "the best possible for these prices"
        prices = self.problem.prices
        if prices.join <= 0:
            return "not proven to be the best"
        joins = whole_up((self.value - self.bound) / prices.join)
        changes = "one change of skein" if joins == 1 else f"{joins} changes of skein"
        return f"at most so much from the best as {changes} would cost"


def propose(
    book: Book, reckoning: Reckoning, plan_id: str, effort: Effort | None = None
) -> Proposal:
    """Skeins for what the parts of a plan still miss; KeyError for a plan that is gone.

    What is promised already stays. The needs are taken larger by a share, found by bisection, so
    that the skeins chosen are enough as often as was asked; the odds are those of the reckoning.
    """
    return _Sureness(book, ask(book, reckoning, plan_id), effort or Effort()).found()


def proposal_of(book: Book, asked: Asked, share: float, solved: Solved) -> Proposal:
    """The proposal that an answer to what was asked makes, with its odds by the reckoning."""
    return _reckoned(book, asked, share, solved)[0]


def _reckoned(book: Book, asked: Asked, share: float, solved: Solved) -> tuple[Proposal, Reckoning]:
    problem = asked.surer(share)
    chosen = tuple(choices(asked, problem, solved.groups))
    promised = promises(asked, chosen)
    after = reckon(replace(book, promises=(*book.promises, *promised)))
    odds = after.plan(asked.plan_id).odds
    return Proposal(promised, chosen, solved, share, odds, asked, problem), after


class _Sureness:
    """The search for the share; every solve starts from the groups of the one before."""

    def __init__(self, book: Book, asked: Asked, effort: Effort) -> None:
        self.book, self.asked, self.effort = book, asked, effort
        self.pool: dict[Group, None] = {}
        self.solves = 0

    def found(self) -> Proposal:
        share = self._rough_share()
        best, more = self.at(share, self.effort)
        while more > 0 and self.solves < SOLVES:
            share += more
            best, more = self.at(share, self.effort)
        return best

    def _rough_share(self) -> float:
        """The least share that is enough, within `CLOSE`, found with little repair each time."""
        rough = replace(self.effort, tries=min(ROUGH, self.effort.tries), nodes=0)
        _, more = self.at(0.0, rough)
        low = high = 0.0
        while more > 0 and self.solves < SOLVES - 2:
            low, high = high, high + more
            _, more = self.at(high, rough)
        while high - low > CLOSE and self.solves < SOLVES - 1:
            middle = (low + high) / 2
            _, more = self.at(middle, rough)
            low, high = (middle, high) if more > 0 else (low, middle)
        return high

    def at(self, share: float, effort: Effort) -> tuple[Proposal, float]:
        """The proposal with needs larger by a share, and how much larger still they must be."""
        self.solves += 1
        solved = solve(self.asked.surer(share), effort, tuple(self.pool))
        self.pool |= dict.fromkeys(solved.pool)
        found, after = _reckoned(self.book, self.asked, share, solved)
        return found, lacking(found, after)


def lacking(proposal: Proposal, after: Reckoning) -> float:
    """The share by which needs must be larger still for the chosen skeins, with what is to be made,
    to be as sure as was asked by the reckoning; 0 where they are."""
    answer = after.plan(proposal.asked.plan_id)
    if not answer.groups:
        return 0.0
    z = normal_quantile(answer.sureness ** (1 / len(answer.groups)))
    return max(_lacking(proposal, after, one, z) for one in answer.groups)


def _lacking(proposal: Proposal, after: Reckoning, group: GroupAnswer, z: float) -> float:
    asked, problem = proposal.asked, proposal.problem
    own = [
        one for one in proposal.solved.groups if problem.kinds[one.kind].yarns[0] in group.yarn_ids
    ]
    missing = sum(asked.units[j].missing_m for one in own for j in one.parts)
    if missing <= 0:
        return 0.0
    made = sum(max(0, -left(problem, one)) for one in own)
    wanted = group.need.value + z * (group.supply - group.need).u
    lacks = wanted - group.used_m - made - _held(asked, after, group.yarn_ids)
    return lacks / missing if lacks > LEAST_M else 0.0


def _held(asked: Asked, after: Reckoning, yarn_ids: tuple[str, ...]) -> float:
    """Metres in the skeins promised to the plan: its own of them and what is free."""
    metres = 0.0
    for line in after.shelf.values():
        parts = {one.part_id for one in line.promised_to if one.plan_id == asked.plan_id}
        if parts - {None} and asked.lots.book.holding[line.holding_id].yarn_id in yarn_ids:
            metres += can_take_m(line, asked.plan_id)
            metres += sum(
                one.m
                for one in line.promised_to
                if one.plan_id == asked.plan_id and one.part_id is not None
            )
    return metres
