"""All that is learned of a maker, from a book."""

from collections.abc import Iterable
from dataclasses import dataclass, field
from functools import cached_property
from itertools import chain

from app.book.book import Book
from app.craft.learning import Belief, Effect, Normal, evenness, take_in
from app.planning.learning.factors import MAKER, PACE_NAME, factor_of, prior
from app.planning.learning.garments_seen import (
    FACTOR_OF,
    PATTERN,
    PLACE,
    garment_hours_seen,
    garments_seen,
)
from app.planning.learning.observed import Names, Observation, Told
from app.planning.learning.skeins_seen import grist_seen, shrink_seen
from app.planning.learning.steps_seen import StepsSeen
from app.planning.learning.stints_seen import stints_seen
from app.planning.learning.usual import PACES

OF_GARMENTS = dict.fromkeys((*FACTOR_OF.values(), PLACE, PATTERN), "_garments")

LATEST = 200
"""So many of the latest observations of a kind are learned from: a hand changes (practice)."""


@dataclass(frozen=True)
class Lesson:
    """What is thought of some factors once all that counts was seen; `told` are the observations
    in their order, those that do not count among them."""

    told: tuple[Told, ...]
    belief: Belief

    def expected(self, effects: tuple[Effect, ...], sd: float = 0.0) -> Normal:
        """A sum of the effects of one factor, as wide as its measurements really strayed."""
        found, factor = self.belief.expected(effects, sd), effects[0][0]
        own = [one.judged for one in self.told if factor in one.observation.factors]
        return Normal(found.mean, found.sd * evenness(own))


@dataclass(frozen=True)
class Learnt:
    """What a book tells of its maker, a lesson for each sort of observation, learned when it is
    first asked for. Pure: the same book and marks always give the same."""

    book: Book = field(default_factory=Book)

    def times(self, factor: str, names: Names, next_batch: bool = True) -> Normal:
        """A factor as a multiple of what is usual, in logs: that of the next batch, or the mean of
        many."""
        sd = factor_of(factor).batch if next_batch else 0.0
        return self._lesson(factor).expected(names.effects(factor), sd)

    def of_maker(self, factor: str) -> Normal:
        """The maker's own share of a factor, whatever fleece or yarn it is."""
        return self._lesson(factor).expected(((factor, MAKER, ""),))

    def seen(self, factor: str, names: Names | None = None) -> int:
        """How many observations a factor was learned from; of a case, only those that bear on it
        by more than being the same maker's."""
        told = self._lesson(factor).told
        counting = [one.observation for one in told if one.counts]
        return sum(1 for one in counting if factor in one.factors and _bears(one, factor, names))

    def pace(self, work: str, yarn_id: str | None = None) -> Normal:
        """The logarithm of an hour's work as a multiple of the usual pace."""
        return self.times(PACE_NAME + work, Names(yarn=yarn_id or ""), next_batch=False)

    def paced(self) -> tuple[str, ...]:
        """The kinds of work of which a pace was learned."""
        return tuple(one for one in PACES if self.seen(PACE_NAME + one))

    @property
    def told(self) -> tuple[Told, ...]:
        """Every observation of every lesson."""
        return tuple(chain.from_iterable(one.told for one in self._all))

    @property
    def _all(self) -> tuple[Lesson, ...]:
        return self._steps, self._shrink, self._grist, self._pace, self._garments

    def _lesson(self, factor: str) -> Lesson:
        if factor.startswith(PACE_NAME):
            return self._pace
        own = {"shrink": "_shrink", "grist": "_grist"} | OF_GARMENTS
        found: Lesson = getattr(self, own.get(factor, "_steps"))
        return found

    @cached_property
    def _steps(self) -> Lesson:
        return self._taken_in(StepsSeen(self.book).all())

    @cached_property
    def _shrink(self) -> Lesson:
        return self._taken_in(shrink_seen(self.book))

    @cached_property
    def _grist(self) -> Lesson:
        return self._taken_in(grist_seen(self.book))

    @cached_property
    def _pace(self) -> Lesson:
        return self._taken_in(chain(stints_seen(self.book), garment_hours_seen(self.book)))

    @cached_property
    def _garments(self) -> Lesson:
        return self._taken_in(garments_seen(self.book))

    def _taken_in(self, found: Iterable[Observation]) -> Lesson:
        latest = sorted(found, key=lambda one: (one.day, one.key))[-LATEST:]
        verdicts = {one.id: one.verdict for one in self.book.marks}
        belief = Belief(prior)
        judged = take_in(belief, (one.seen for one in latest), verdicts)
        return Lesson(tuple(map(Told, latest, judged)), belief)


def learn(book: Book) -> Learnt:
    """What a book tells of its maker."""
    return Learnt(book)


def _bears(one: Observation, factor: str, names: Names | None) -> bool:
    if names is None:
        return True
    mine: set[Effect] = set(names.effects(factor))
    own = {effect for effect in mine if effect[1] != MAKER and effect[2]}
    return bool(own & set(one.names.effects(factor)))
