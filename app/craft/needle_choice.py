"""Which needle gives a wanted gauge: from needle and yarn, or from one's own swatches."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import pi, sqrt

from app.craft.domain import positive
from app.craft.fabric import KS_DRY, KS_WET
from app.craft.figure import Figure
from app.craft.lines import Point, fitted_line
from app.craft.needles import (
    HAND_SHARE,
    GaugeAhead,
    Needle,
    needles,
    predict_gauge,
    row_ratio,
)
from app.craft.thickness import wraps_diameter_mm
from app.craft.working import Step

SWATCH_SD = 0.6
"""Stitches in 10 cm by which swatches of one yarn and hand scatter about a line (practice)."""


@dataclass(frozen=True, slots=True)
class Choice:
    """The needle to try, in mm, the sizes sold next to it with the gauge each would give, and the
    working."""

    needle: Figure
    offers: tuple[tuple[Needle, GaugeAhead], ...]
    steps: tuple[Step, ...]


def needle_for(
    stitches_per_10cm: float,
    wraps_per_inch: float,
    hand: float = 1.0,
    rows_per_stitch: float | None = None,
    washed: bool = True,
    hand_share: float = HAND_SHARE,
) -> Choice:
    """The needle for so many stitches in 10 cm, before any swatch: `predict_gauge` inverted,
    D = 10·l/(h·π) − d with l = 10·√(Ks/R)/stitches.

    ValueError where no needle is thin enough, the yarn alone being thicker than the loop.
    """
    ratio, ratio_u = row_ratio(rows_per_stitch)
    across = positive(stitches_per_10cm, "stitches in 10 cm")
    loop = 10 * sqrt((KS_WET if washed else KS_DRY) / ratio) / across
    around = 10 * loop / (positive(hand, "the knitter's hand") * pi)
    mm = around - wraps_diameter_mm(wraps_per_inch)
    if mm <= 0:
        raise ValueError("no needle is thin enough: this yarn is too thick for so many stitches")
    causes = {
        "the knitter's hand": -around * hand_share,
        "rows per stitch": -around * ratio_u / ratio / 2,
    }
    needle = Figure(mm, "mm", causes)
    offers = tuple(
        (one, predict_gauge(one.mm, wraps_per_inch, hand, rows_per_stitch, washed, hand_share))
        for one in sold_next_to(mm)
    )
    return Choice(needle, offers, _steps(needle, loop, around, across, hand, wraps_per_inch))


def sold_next_to(mm: float) -> tuple[Needle, ...]:
    """The sizes on either side of a diameter, or the one that is exactly it; only one beyond the
    ends of the table."""
    exact = [one for one in needles() if one.mm == mm]
    below = [one for one in needles() if one.mm < mm][-1:]
    above = [one for one in needles() if one.mm > mm][:1]
    return tuple(exact or [*below, *above])


def hand_from(loop_cm: float, needle_mm: float, wraps_per_inch: float) -> float:
    """The knitter's hand a swatch shows: h = 10·l/(π·(D+d)), 1 for the usual one. ValueError for a
    number that is not above zero."""
    around = positive(needle_mm, "the needle in mm") + wraps_diameter_mm(wraps_per_inch)
    return 10 * positive(loop_cm, "the yarn in one stitch in cm") / (pi * around)


def needle_by_swatches(swatches: Sequence[Point], stitches_per_10cm: float) -> Choice:
    """The needle for so many stitches in 10 cm, from swatches as (needle in mm, stitches in 10 cm)
    of one yarn, on a fitted line.

    ValueError for swatches on fewer than two needles, or on which a thicker needle does not give
    fewer stitches.
    """
    line = fitted_line(swatches)
    if line.slope >= 0:
        raise ValueError("these swatches do not become looser on thicker needles: knit one more")
    mm = line.x_at(positive(stitches_per_10cm, "stitches in 10 cm"))
    positive(mm, "the needle these swatches point to, in mm,")
    ahead = line.ahead(mm, "st/10 cm", SWATCH_SD)
    needle = Figure(mm, "mm", {cause: part / line.slope for cause, part in ahead.causes.items()})
    (needles_mean, gauge_mean), slope = line.middle, line.slope
    how = f"{needles_mean:.2f} mm + ({stitches_per_10cm:g} − {gauge_mean:.2f}) ÷ {slope:.2f}"
    source = f"least squares through {line.points} swatches"
    return Choice(needle, (), (Step("Needle", how, mm, "mm", needle.u, source, "measured"),))


def _steps(
    needle: Figure, loop: float, around: float, across: float, hand: float, wraps: float
) -> tuple[Step, ...]:
    yarn = wraps_diameter_mm(wraps)
    by_hand = f"10 × {loop:.3f} cm ÷ ({hand:g} × π)"
    return (
        Step(
            "Yarn in one stitch",
            f"from {across:g} stitches in 10 cm",
            loop,
            "cm",
            None,
            "Munden 1959",
        ),
        Step(
            "Needle and yarn together", by_hand, around, "mm", None, "common practice", "practice"
        ),
        Step("Needle", f"{around:.2f} mm − {yarn:.2f} mm of yarn", needle.value, "mm", needle.u),
    )
