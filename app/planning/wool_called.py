"""Wool called for by the plans: each gram of a fleece once, what is nearest to yarn first."""

from dataclasses import dataclass, field

from app.book.book import Book
from app.book.fleece import Fleece
from app.book.holding import Holding
from app.book.weighed_as import weighed_as
from app.craft.figure import Figure
from app.craft.fleece import share_kept, wool_for
from app.planning.fleeces import NOTHING, fleece_yield, losses_for, wool_g, wool_of
from app.planning.learning import Learnt

READY_FIRST = ("part spun", "carded", "combed", "scoured", "drying", "skirted", "raw")

LEAST_G = 0.5
"""Less yarn than this is not worth spinning from a holding."""


@dataclass(frozen=True, slots=True)
class Called:
    """Grams of a holding as it is now, taken for a plan: the finished yarn (g) it becomes, the
    prepared fibre (g) on the way, and the raw fleece (g) that so much yarn stands for."""

    holding: Holding
    now_g: float
    yarn_g: float
    prepared_g: float
    raw_g: float


@dataclass(slots=True)
class WoolCalled:
    """What has been called for so far: grams of each holding as it is now, by its id."""

    book: Book
    learnt: Learnt = NOTHING
    grams: dict[str, float] = field(default_factory=dict)
    _wool: dict[str, list[Holding]] = field(init=False)

    def __post_init__(self) -> None:
        self._wool = wool_of(self.book)

    def call(self, fleece: Fleece, yarn_g: float) -> tuple[Called, ...]:
        """Call for so many grams of finished yarn; less where the fleece has no more to give."""
        found = []
        for holding in self._ready(fleece):
            called = self._from(fleece, holding, yarn_g)
            if called.yarn_g >= LEAST_G:
                self.grams[holding.id] = self.grams.get(holding.id, 0.0) + called.now_g
                yarn_g -= called.yarn_g
                found.append(called)
        return tuple(found)

    def of_fleece(self, fleece_id: str) -> float:
        """Grams called for of all the wool of a fleece, as it is now."""
        return sum(self.grams.get(one.id, 0.0) for one in self._wool.get(fleece_id, []))

    def _ready(self, fleece: Fleece) -> list[Holding]:
        return sorted(
            self._wool.get(fleece.id, []),
            key=lambda one: (READY_FIRST.index(_state(one)), one.code),
        )

    def _from(self, fleece: Fleece, holding: Holding, wanted_g: float) -> Called:
        share, _ = fleece_yield(fleece, self.learnt)
        state = weighed_as(self.book, holding) or "carded"
        losses = losses_for(state, self.book.settings.steps, self.learnt, fleece)
        kept = share_kept(state, share, losses).value
        left = wool_g(self.book, [holding]) - self.grams.get(holding.id, 0.0)
        yarn_g = max(0.0, min(wanted_g, left * kept))
        yarn = Figure(yarn_g, "g")
        prepared = wool_for(yarn, "carded", share, losses).value
        raw = wool_for(yarn, "raw", share, losses).value
        return Called(holding, yarn_g / kept, yarn_g, prepared, raw)


def _state(holding: Holding) -> str:
    return holding.state or "carded"
