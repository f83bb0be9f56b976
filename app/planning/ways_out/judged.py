"""The ways out of one plan, each reckoned by the one reckoning and ranked by odds for effort."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass

from app.book.book import Book
from app.book.words import OPEN_STATES
from app.planning.answers import PlanAnswer, Reckoning
from app.planning.reckoning import reckon
from app.planning.ways_out import ways
from app.planning.ways_out.situation import Situation
from app.planning.ways_out.way import Proposal, Way

WORTH_ODDS = 0.01
"""A way that gains less is no way out, unless it leaves much less to be made."""

WORTH_SHARE = 0.1
"""A share of what is short that is worth having covered, whatever the odds."""

AT_LEAST_EVENINGS = 0.25
"""Nothing is done for nothing: what the least effort counts as, in evenings (assumed)."""

HARM = 0.025
"""Odds another plan may lose unmentioned: half a time in twenty."""


@dataclass(frozen=True, slots=True)
class Harm:
    """Another plan that comes off worse, with its odds before and after."""

    plan_id: str
    name: str
    before: float
    after: float


@dataclass(frozen=True, slots=True)
class Judged:
    """A proposal with the plan before it and after it, and the other plans it harms."""

    proposal: Proposal
    before: PlanAnswer
    after: PlanAnswer
    harms: tuple[Harm, ...]

    @property
    def gain(self) -> float:
        """Odds gained, between -1 and 1."""
        return self.after.odds - self.before.odds

    @property
    def worth(self) -> float:
        """Odds gained for each evening."""
        return self.gain / max(self.proposal.effort.evenings, AT_LEAST_EVENINGS)


@dataclass(frozen=True, slots=True)
class Looked:
    """Ways out, the best first, once `looked` of so many kinds of them were looked for."""

    ways: tuple[Judged, ...]
    looked: int
    of: int


def ways_out(book: Book, reckoning: Reckoning, plan_id: str) -> tuple[Judged, ...]:
    """Every way out of a plan's shortfall, the best first; none where nothing is short or the need
    is not known. KeyError for a plan that is not in the book."""
    situation = Situation(book, reckoning, plan_id)
    return _ranked(one for way in ways() for one in _of_way(situation, way))


def search_ways(tell: Callable[[Looked], None], book: Book, plan_id: str) -> None:
    """The same kind by kind: `tell` hears of what was found after each."""
    situation, kinds = Situation(book, reckon(book), plan_id), ways()
    found: list[Judged] = []
    for looked, way in enumerate(kinds, 1):
        found += _of_way(situation, way)
        tell(Looked(_ranked(found), looked, len(kinds)))


def _ranked(found: Iterable[Judged]) -> tuple[Judged, ...]:
    helpful = [one for one in found if _helps(one)]
    return tuple(sorted(helpful, key=lambda one: (-one.worth, one.after.short_m, one.proposal.key)))


def way_out(book: Book, reckoning: Reckoning, plan_id: str, key: str) -> Judged | None:
    """The one way out of that key, found anew; None where there is no such way any more."""
    situation = Situation(book, reckoning, plan_id)
    named = [one for one in ways() if one.word == key.split("-")[0]]
    found = [one for way in named for one in _of_way(situation, way)]
    return next((one for one in found if one.proposal.key == key and _helps(one)), None)


def _of_way(situation: Situation, way: Way) -> Iterator[Judged]:
    answer = situation.answer
    short = answer.begun and answer.short_m > 0 and answer.state in OPEN_STATES
    if short and (way.at_once or not answer.waiting):
        for proposal in way.find(situation):
            yield _judged(situation, proposal)


def _judged(situation: Situation, proposal: Proposal) -> Judged:
    after = reckon(proposal.seen.in_book(situation.book))
    return Judged(
        proposal,
        situation.answer,
        after.plan(proposal.about),
        tuple(_harms(situation, after, proposal)),
    )


def _harms(situation: Situation, after: Reckoning, proposal: Proposal) -> Iterator[Harm]:
    now = {one.plan_id: one for one in after.plans}
    for was in situation.reckoning.plans:
        if was.plan_id in (situation.plan_id, proposal.about) or not was.begun:
            continue
        if was.odds - now[was.plan_id].odds > HARM:
            yield Harm(was.plan_id, was.name, was.odds, now[was.plan_id].odds)


def _helps(one: Judged) -> bool:
    covered = one.before.short_m - one.after.short_m
    return one.gain >= WORTH_ODDS or covered >= WORTH_SHARE * one.before.short_m
