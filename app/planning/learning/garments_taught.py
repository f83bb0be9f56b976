"""What finished garments teach of a part that is still to be knit."""

from collections.abc import Mapping
from dataclasses import dataclass
from math import exp, hypot, sqrt

from app.book.plan import Plan
from app.craft.learning import Normal
from app.craft.working import Step
from app.planning.learning.garments_seen import (
    FACTOR_OF,
    PATTERN,
    PLACE,
    pattern_of,
    source_of,
)
from app.planning.learning.in_force import learned_from
from app.planning.learning.learnt import Learnt
from app.planning.learning.observed import Names
from app.planning.needs_planned import STATED_CAUSE, STATED_MEDIAN, PartNeed, stated_factor
from app.planning.places import place_of

HAND = "the yarn your garments take, learned"


@dataclass(frozen=True, slots=True)
class Taught:
    """Yarn taken as a multiple of yarn planned, and why it is unsure: `causes` are shares of it.
    They take the place of what was unsure without learning, but for what a swatch measured."""

    times: float
    causes: Mapping[str, float]
    step: Step

    def instead_of(self, need: PartNeed) -> set[str]:
        """The causes of a need that what was learned takes the place of."""
        if need.basis == "stated":
            return {STATED_CAUSE}
        return set(need.loop.causes) if need.loop and need.basis == "gauge" else set()


def taught(learnt: Learnt, plan: Plan, need: PartNeed) -> Taught | None:
    """What was learned of a part like this; None where no garment told anything of it."""
    factor = FACTOR_OF.get(need.basis, "")
    seen = learnt.seen(factor) if factor else 0
    if not seen:
        return None
    names = Names(
        place=place_of(need.part), pattern=pattern_of(need), source=source_of(learnt.book, plan)
    )
    whole, hand = learnt.times(factor, names), learnt.of_maker(factor)
    beside = _beside(learnt, names)
    times = exp(whole.mean + beside.mean)
    if need.basis == "stated":
        times *= STATED_MEDIAN * exp(whole.sd**2 / 2) / stated_factor().value
    causes = {
        f"{HAND} ({need.basis})": min(hand.sd, whole.sd),
        f"how far {plan.name} strays from them": sqrt(max(0.0, whole.sd**2 - hand.sd**2)),
    }
    if beside.sd:
        causes[f"{place_of(need.part)} beside the rest of a garment"] = beside.sd
    u = hypot(*causes.values())
    how = f"× {times:.3f} of what was planned, {learned_from(seen)}"
    step = Step("What your garments took", how, times, "times", times * u, "", "measured")
    return Taught(times, causes, step)


def _beside(learnt: Learnt, names: Names) -> Normal:
    """A part beside the rest of its garment, in logs; nothing where none like it was weighed."""
    found = [
        learnt.times(factor, names, next_batch=False)
        for factor, name in ((PLACE, names.place), (PATTERN, names.pattern))
        if name and learnt.seen(factor, names)
    ]
    return Normal(sum(one.mean for one in found), hypot(*(one.sd for one in found)))
