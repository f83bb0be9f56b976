"""Which number the reckoning goes by: what the maker set herself, what was learned, or practice."""

from collections.abc import Mapping
from dataclasses import dataclass
from math import exp
from types import MappingProxyType

from app.book.settings import Settings
from app.craft.fleece import LOSS_U, Making
from app.craft.working import Standing, Step
from app.planning.learning.learnt import Learnt
from app.planning.learning.observed import Names
from app.planning.learning.usual import set_herself, usual_kept

STEP_OF: Mapping[str, Making] = MappingProxyType(
    {"skirt": "skirt", "card": "prepare", "comb": "prepare", "spin": "spin", "finish": "finish"}
)

LOST = {
    "skirt": "Lost in skirting",
    "card": "Lost in carding",
    "comb": "Lost in combing",
    "spin": "Lost in spinning",
    "finish": "Weight lost in finishing",
    "shrink": "Length lost in finishing",
}

SHRINK_U = 0.08
"""Standard uncertainty of the share of length that finishing takes, where nothing was measured
(practice): finished skeins in print lost 2 to 28 %."""


@dataclass(frozen=True, slots=True)
class InForce:
    """The share lost at a step that is reckoned with, its standard uncertainty, and why."""

    factor: str
    lost: float
    u: float
    why: str
    standing: Standing

    @property
    def step(self) -> Step:
        """As a line of working, in percent."""
        return Step(
            LOST[self.factor], self.why, 100 * self.lost, "%", 100 * self.u, "", self.standing
        )


def lost_in(factor: str, settings: Settings, learnt: Learnt, names: Names) -> InForce:
    """The share lost at a step: a setting she changed stays in force, else what was learned, else
    common practice."""
    kept, u = (
        usual_kept(factor, settings),
        LOSS_U[STEP_OF[factor]] if factor in STEP_OF else SHRINK_U,
    )
    if set_herself(factor, settings):
        return InForce(factor, 1 - kept, u, "as you set it yourself in the settings", "assumed")
    seen = learnt.seen(factor)
    if not seen:
        return InForce(factor, 1 - kept, u, "common practice, nothing measured yet", "practice")
    times = learnt.times(factor, names)
    kept *= exp(times.mean)
    return InForce(factor, max(0.0, 1 - kept), kept * times.sd, learned_from(seen), "measured")


def learned_from(seen: int) -> str:
    """ "learned from 3 of your own measurements" """
    return (
        "learned from one of your own measurements"
        if seen == 1
        else (f"learned from {seen} of your own measurements")
    )
