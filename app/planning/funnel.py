"""The way a fleece still has before it, stage by stage: what each leaves, and what is lost."""

from dataclasses import dataclass

from app.book.fleece import Fleece
from app.book.settings import StepLosses
from app.craft.fleece import share_kept, steps_from
from app.planning.fleeces import NOTHING, fleece_yield, losses_for
from app.planning.learning import Learnt

PATH = ("raw", "skirted", "scoured", "carded")
"""The states a fleece passes on its way to the wheel."""


@dataclass(frozen=True, slots=True)
class Stage:
    """Expected grams at a stage, and what the step to it takes away."""

    name: str
    g: float
    lost_g: float = 0.0


def funnel(
    now_g: float, state: str, fleece: Fleece, steps: StepLosses, learnt: Learnt = NOTHING
) -> tuple[Stage, ...]:
    """From what a fleece weighs in its state to finished yarn, by expected losses alone.

    A stage holds what gives the same yarn: grams × kept from here / kept from there.
    """
    share = fleece_yield(fleece, learnt)[0]
    losses = losses_for(state, steps, learnt, fleece)
    yarn_g = now_g * share_kept(state, share, losses).value
    ahead = [one for one in PATH if len(steps_from(one)) < len(steps_from(state))]
    found = [Stage(state, now_g)]
    for name in ahead:
        found.append(_next(found[-1], name, yarn_g / share_kept(name, share, losses).value))
    return (*found, _next(found[-1], "yarn", yarn_g))


def _next(before: Stage, name: str, g: float) -> Stage:
    return Stage(name, g, before.g - g)
