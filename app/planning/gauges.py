"""A gauge assumed from the yarn where the maker has none yet; wide, and shown as assumed."""

from math import sqrt

from app.book.gauge import Gauge
from app.craft.fabric import KS_WET
from app.craft.figure import Figure
from app.craft.working import Step

USUAL_FIRMNESS = 11.0
"""√tex/l of an ordinary fabric: the middle of the printed classes, 10.5 to 12 (derived)."""

FIRMNESS_SHARE = 0.15
"""Standard uncertainty of the yarn in a stitch when only the yarn is known (assumed)."""

ROWS_TO_STITCHES = 1.36
"""Rows to stitches of hand-knit stocking stitch (practice)."""


def gauge_from_grist(tex: Figure, whose: str) -> tuple[Gauge, Figure, Step]:
    """A usual gauge for a yarn of that linear density, the yarn in a stitch in cm, and the working.

    l = √tex/11, S = 21.6/l² (Munden 1959), rows = 1.36 × stitches. `whose` names the plan, so that
    its parts share the error.
    """
    loop = sqrt(tex.value) / USUAL_FIRMNESS
    across = sqrt(KS_WET / ROWS_TO_STITCHES) / loop
    gauge = Gauge(10 * across, 10 * across * ROWS_TO_STITCHES)
    figure = Figure(loop, "cm", {f"gauge assumed for {whose}": loop * FIRMNESS_SHARE})
    how = f"√({tex.value:.0f} tex) ÷ {USUAL_FIRMNESS:g} cm: no gauge yet"
    source = "middle of the printed yarn classes"
    step = Step("Yarn in one stitch", how, loop, "cm", figure.u, source, "assumed")
    return gauge, figure, step
