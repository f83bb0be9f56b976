"""Hours at the needles: an estimate from the stitches, until a maker's own pace is known."""

from app.craft.figure import Figure
from app.craft.working import Step
from app.planning.learning import Learnt
from app.planning.learning.factors import PACE_NAME
from app.planning.learning.in_force import learned_from
from app.planning.time_pace import hours_of

STITCHES_A_MINUTE = 25.0
"""An unhurried hand knitter in a plain fabric (practice)."""

SLOW, QUICK = 15.0, 40.0
"""Stitches in a minute between which most knitters lie (practice)."""

PACE_SHARE = (1 / SLOW - 1 / QUICK) * STITCHES_A_MINUTE / (2 * 1.6448536)
"""Standard uncertainty of the hours, as a share: 9 in 10 lie between slow and quick."""


def hours_for(stitches: float) -> Figure:
    """Hours of knitting in so many stitches, at the usual pace."""
    hours = stitches / STITCHES_A_MINUTE / 60
    return Figure(hours, "h", {"the pace of a knitter": hours * PACE_SHARE})


def hours_step(stitches: int, metres: float, learnt: Learnt) -> Step:
    """The hours of a plan of so many stitches, and metres, as a line of working: at her own pace in
    metres where she noted some knitting, else by the stitches."""
    seen = learnt.seen(PACE_NAME + "knit")
    if seen:
        own = hours_of(learnt, "knit", metres)
        how = f"{metres:.0f} m, {learned_from(seen)}"
        return Step("Hours of knitting", how, own.value, "h", own.u, "", "measured")
    hours = hours_for(stitches)
    how = f"{stitches} stitches ÷ {STITCHES_A_MINUTE:g} in a minute, {SLOW:g} to {QUICK:g}"
    source = "common practice, no source"
    return Step("Hours of knitting", how, hours.value, "h", hours.u, source, "practice")
