"""Whether a weighing of a fleece can be believed: a slip would book good wool as waste."""

from dataclasses import dataclass
from typing import Literal

from app.book.fleece import Fleece
from app.book.settings import StepLosses
from app.book.words import WoolState
from app.craft.figure import Figure
from app.craft.fleece import share_kept
from app.planning.fleeces import NOTHING, fleece_yield, losses_for
from app.planning.learning import Learnt
from app.work.fleece_step import is_back

MOST_LOST = 0.75
"""More than this share lost is asked about, whatever the step (practice)."""

MOST_GAINED = 0.2
"""Dry wool weighs more in damp air, and a scale errs; more than this share is asked about even
where there was no step (practice)."""

MOST_FROM_AIR = 0.03
"""What comes of several lots, or of a bobbin spun, is no more than this share above what went in:
the air adds less (practice)."""

STANDARD_DEVIATIONS = 3


@dataclass(frozen=True, slots=True)
class Doubt:
    """What is odd about a weighing; `lost` and the `usual` loss as shares of what was taken."""

    what: Literal["back", "more", "less"]
    lost: float
    usual: float | None = None


def doubt_of(
    fleece: Fleece,
    steps: StepLosses,
    before: WoolState,
    after: WoolState,
    taken_mg: int,
    weighed_mg: int,
    learnt: Learnt = NOTHING,
) -> Doubt | None:
    """What to ask about wool taken in one state and weighed in another; None where nothing is odd.
    Damp wool moves nothing, and is not asked about."""
    lost = 1 - weighed_mg / taken_mg if taken_mg > 0 else 0.0
    if is_back(before, after):
        return Doubt("back", lost)
    if after == "drying":
        return None
    usual = usual_loss(fleece, steps, before, after, learnt)
    most = usual.value + STANDARD_DEVIATIONS * usual.u if usual else MOST_LOST
    if lost > min(MOST_LOST, most):
        return Doubt("less", lost, usual.value if usual else None)
    return Doubt("more", lost) if lost < (0.0 if before != after else -MOST_GAINED) else None


def usual_loss(
    fleece: Fleece,
    steps: StepLosses,
    before: WoolState,
    after: WoolState,
    learnt: Learnt = NOTHING,
) -> Figure | None:
    """The share usually lost between two states; None where they are one: of a weighing without a
    step nothing is known."""
    if before == after:
        return None
    share, losses = fleece_yield(fleece, learnt)[0], losses_for(after, steps, learnt, fleece)
    first, last = (share_kept(one, share, losses) for one in (before, after))
    return Figure(1.0, "share") - first.per(last, "share")
