"""Knitting needles: their sizes, and the gauge a needle will give before any swatch.

A needle's key is its diameter in mm: numbers differ by country and by maker (a US 2 is sold as
2.75 and as 3.0 mm).
"""

from dataclasses import dataclass
from functools import cache
from math import pi, sqrt
from typing import cast

from app.craft.domain import positive
from app.craft.fabric import KS_WET
from app.craft.figure import Figure
from app.craft.tables import table
from app.craft.thickness import wraps_diameter_mm
from app.craft.working import Standing

HAND_SHARE = 0.10
"""How far one knitter's hand lies from another's (practice: class midpoints give 0.93 to 1.08)."""

ROWS_PER_STITCH = 1.36
ROWS_PER_STITCH_U = 0.08
"""Rows per stitch of hand-knit gauges (practice; machine-knit wool 1.30, Munden 1959)."""


@dataclass(frozen=True, slots=True)
class Needle:
    """A size by its mm; US and old British numbers are empty where there is none."""

    mm: float
    us: str
    uk_old: str
    standing: Standing
    source: str


@cache
def needles() -> tuple[Needle, ...]:
    """Every size, thinnest first."""
    return tuple(
        Needle(
            float(row["mm"]),
            row["us"],
            row["uk_old"],
            cast(Standing, row["standing"]),
            row["source"],
        )
        for row in table("needles")
    )


def us_size(number: str) -> tuple[float, ...]:
    """The mm a US number is sold as, thinnest first; none for a number nobody uses."""
    return tuple(needle.mm for needle in needles() if needle.us and needle.us == number)


def old_british_size(number: str) -> tuple[float, ...]:
    """The mm of an old British number; none for a number nobody uses."""
    return tuple(needle.mm for needle in needles() if needle.uk_old and needle.uk_old == number)


def nearest_needle(mm: float) -> Needle:
    """The size nearest to a diameter above zero; the thinner of two as near."""
    positive(mm, "the needle in mm")
    return min(needles(), key=lambda needle: abs(needle.mm - mm))


@dataclass(frozen=True, slots=True)
class GaugeAhead:
    """The loop in cm and the stitches and rows in 10 cm to expect, all from one hand."""

    loop: Figure
    stitches: Figure
    rows: Figure


def predict_gauge(
    needle_mm: float, wraps_per_inch: float, hand: float = 1.0, rows_per_stitch: float | None = None
) -> GaugeAhead:
    """Gauge of washed plain knit on a needle, before any swatch: l = h·π·(D+d)/10.

    `hand` is the knitter's own factor (1.00 ± 10 % until learnt); `rows_per_stitch` 1.36 ± 0.08
    unless given. ValueError for a number that is not above zero.
    """
    thick = positive(needle_mm, "the needle in mm") + wraps_diameter_mm(wraps_per_inch)
    loop = positive(hand, "the knitter's hand") * pi * thick / 10
    ratio = positive(ROWS_PER_STITCH if rows_per_stitch is None else rows_per_stitch, "rows/stitch")
    ratio_u = ROWS_PER_STITCH_U if rows_per_stitch is None else 0.0
    stitches = 10 * sqrt(KS_WET / ratio) / loop
    rows = 10 * sqrt(KS_WET * ratio) / loop
    return GaugeAhead(
        Figure(loop, "cm", {"the knitter's hand": loop * HAND_SHARE}),
        _by_hand(stitches, "st/10 cm", -ratio_u / ratio / 2),
        _by_hand(rows, "rows/10 cm", ratio_u / ratio / 2),
    )


def _by_hand(count: float, unit: str, by_ratio: float) -> Figure:
    causes = {"the knitter's hand": -count * HAND_SHARE, "rows per stitch": count * by_ratio}
    return Figure(count, unit, causes)
