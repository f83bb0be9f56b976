"""The best set of garments for the whole shelf, by what the maker values.

Sets are gone through from the most valued down. A set that is short of yarn even by expectation is
passed over; any other is served plan by plan from the shelf, by the reckoning. A plan that then is
not covered is covered no better with more plans before it, so every set that holds these is out as
well. The first that is covered is therefore the best there is, as long as all sets can be listed.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations
from typing import Literal

from app.book.book import Book
from app.planning.answer import SHORT_BELOW_M
from app.planning.answers import PlanAnswer
from app.planning.changes import need_g
from app.planning.reckoning import reckon
from app.planning.shelf_covers import (
    Covered,
    Standing,
    covered,
    in_order,
    intended,
    only_plans,
)
from app.planning.yarns import Lots

Value = Literal["garments", "wool", "spinning", "priorities"]
VALUES: tuple[Value, ...] = ("garments", "wool", "spinning", "priorities")

LISTED = 12
"""Up to so many plans every set is listed: 4096 of them."""

TRIED = 60
"""Sets served from the shelf at most: counted, not timed."""

GOOD: tuple[Standing, ...] = ("fits", "wasteful")

EVEN = 0.5
"""From these odds on what is expected to be needed must be there."""


@dataclass(frozen=True, slots=True)
class Best:
    """The best set: its plans in their order as they then stand; `proven` where no set is better,
    else `bound` is what any set is worth at most, in garments or grams."""

    value: Value
    plans: tuple[Covered, ...]
    worth: float
    proven: bool
    bound: float
    tried: int


@dataclass(frozen=True, slots=True)
class Candidate:
    """A plan with what it takes: at least so many metres of each yarn, and grams in all."""

    plan_id: str
    rank: int
    needs: dict[str, float]
    grams: float


def best_set(book: Book, value: Value) -> Best:
    """The set of intended plans to knit first from this shelf, so that all of it is covered; with
    spinning from the fleeces, unless the least spinning is wanted."""
    spinning = value != "spinning"
    fits = _Fits(book, spinning)
    found = _candidates(book, fits.good)
    if len(found) > LISTED or value == "priorities":
        return _one_by_one(value, found, fits)
    return _listed(value, found, fits)


class _Fits:
    """Which sets the shelf covers, remembering those it does not."""

    def __init__(self, book: Book, spinning: bool) -> None:
        self.book, self.good = book, (*GOOD, "fits after spinning") if spinning else GOOD
        self.wool = _Wool(book, spinning)
        self.out: list[frozenset[str]] = []
        self.tried = 0

    def ruled_out(self, chosen: Sequence[Candidate]) -> bool:
        ids = {one.plan_id for one in chosen}
        return any(one <= ids for one in self.out) or self.wool.too_little_for(chosen)

    def serve(self, chosen: Sequence[Candidate]) -> tuple[Covered, ...] | None:
        """The plans as they stand when served in their order; None where one is not covered."""
        self.tried += 1
        order = [one.plan_id for one in sorted(chosen, key=lambda one: one.rank)]
        served = in_order(only_plans(self.book, order), order, anew=True)
        reckoning = reckon(served)
        stands = tuple(covered(served, reckoning, one) for one in order)
        for place, one in enumerate(stands, 1):
            if one.standing not in self.good:
                self.out.append(frozenset(order[:place]))
                return None
        return stands


class _Wool:
    """What the intended plans may have of each yarn, in m, and of each fleece, in g of yarn."""

    def __init__(self, book: Book, spinning: bool) -> None:
        self.lots, self.spinning = Lots(book), spinning
        reckoning = reckon(only_plans(book, ()))
        self.free = {
            yarn_id: sum(
                reckoning.shelf[one.id].free_m for one in skeins if one.id in reckoning.shelf
            )
            for yarn_id, skeins in self.lots.skeins.items()
        }
        self.fleece = {one.fleece_id: one.yarn_g.value for one in reckoning.fleeces.values()}

    def too_little_for(self, chosen: Sequence[Candidate]) -> bool:
        """True where plans need more than there is even by expectation, each gram counted once."""
        called: dict[str, float] = {}
        for yarn_id in {key for one in chosen for key in one.needs}:
            lacking = sum(one.needs.get(yarn_id, 0.0) for one in chosen)
            lacking -= self.free.get(yarn_id, 0.0)
            fleece_id, tex = self.lots.book.yarn[yarn_id].fleece_id, self.lots.tex(yarn_id)
            if lacking <= 0:
                continue
            if not self.spinning or fleece_id is None or tex is None:
                return True
            called[fleece_id] = called.get(fleece_id, 0.0) + lacking * tex.value / 1000
        return any(grams > self.fleece[one] for one, grams in called.items())


def _candidates(book: Book, good: Sequence[Standing]) -> list[Candidate]:
    """The plans that are covered if there is no other, with what they take then at least."""
    found = []
    for rank, plan in enumerate(intended(book)):
        served = in_order(only_plans(book, [plan.id]), [plan.id], anew=True)
        reckoning = reckon(served)
        if covered(served, reckoning, plan.id).standing in good:
            answer = reckoning.plan(plan.id)
            grams = need_g(answer, Lots(book)) or 0.0
            found.append(Candidate(plan.id, rank, _at_least(answer), grams))
    return found


def _at_least(answer: PlanAnswer) -> dict[str, float]:
    """Metres of each yarn without which no plan is as sure as was asked, where that is at least as
    often as not; nothing where yarns can stand in for each other."""
    alike = [one for one in answer.groups if len(one.yarn_ids) == 1]
    if answer.sureness < EVEN:
        return {}
    return {one.yarn_ids[0]: max(0.0, one.need.value - SHORT_BELOW_M) for one in alike}


def _listed(value: Value, found: list[Candidate], fits: _Fits) -> Best:
    worth = _worth(value)
    sets = sorted(_sets(found), key=lambda one: (*(-x for x in worth(one)), _ranks(one)))
    for chosen in sets:
        if fits.ruled_out(chosen):
            continue
        if fits.tried >= TRIED:
            return _best_left(value, found, fits, worth(chosen)[0])
        if stands := fits.serve(chosen):
            return Best(value, stands, worth(chosen)[0], True, worth(chosen)[0], fits.tried)
    return Best(value, (), 0.0, True, 0.0, fits.tried)


def _best_left(value: Value, found: list[Candidate], fits: _Fits, bound: float) -> Best:
    """One by one, where not every set could be tried."""
    rest = _one_by_one(value, found, fits)
    return Best(value, rest.plans, rest.worth, rest.worth >= bound, bound, fits.tried)


def _one_by_one(value: Value, found: list[Candidate], fits: _Fits) -> Best:
    """Each plan in turn is taken in if all taken in before it stay covered. By priorities that is
    the best; else the most valued come first and no set is worth more than all that fit alone."""
    worth = _worth(value)
    order = found if value == "priorities" else sorted(found, key=lambda one: -worth([one])[0])
    chosen: list[Candidate] = []
    stands: tuple[Covered, ...] = ()
    for one in order:
        if not fits.ruled_out([*chosen, one]) and (tried := fits.serve([*chosen, one])):
            chosen, stands = [*chosen, one], tried
    mine, most = worth(chosen)[0], worth(found)[0]
    proven = value == "priorities" or mine >= most
    return Best(value, stands, mine, proven, most, fits.tried)


def _sets(found: list[Candidate]) -> Iterator[tuple[Candidate, ...]]:
    for size in range(1, len(found) + 1):
        yield from combinations(found, size)


def _worth(value: Value) -> Callable[[Sequence[Candidate]], tuple[float, float]]:
    """What a set is worth, and what decides between equals."""
    if value == "wool":
        return lambda chosen: (sum(one.grams for one in chosen), len(chosen))
    return lambda chosen: (len(chosen), sum(one.grams for one in chosen))


def _ranks(chosen: Sequence[Candidate]) -> tuple[int, ...]:
    return tuple(one.rank for one in chosen)
