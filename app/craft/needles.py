"""Knitting needles: their sizes, and the gauge a needle will give before any swatch.

A needle's key is its diameter in mm: numbers differ by country and by maker (a US 2 is sold as
2.75 and as 3.0 mm).
"""

from dataclasses import dataclass
from functools import cache
from math import pi, sqrt
from typing import cast

from app.craft.domain import positive
from app.craft.fabric import KS_DRY, KS_WET
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
    needle_mm: float,
    wraps_per_inch: float,
    hand: float = 1.0,
    rows_per_stitch: float | None = None,
    washed: bool = True,
    hand_share: float = HAND_SHARE,
) -> GaugeAhead:
    """Gauge of plain knit on a needle, before any swatch: l = h·π·(D+d)/10.

    `hand` is the knitter's own factor, unsure by `hand_share` (1.00 ± 10 % until learnt);
    `rows_per_stitch` 1.36 ± 0.08 unless given; `washed` tells which gauge is asked for, that of the
    washed fabric or the one counted before. ValueError for a number that is not above zero.
    """
    thick = positive(needle_mm, "the needle in mm") + wraps_diameter_mm(wraps_per_inch)
    loop = positive(hand, "the knitter's hand") * pi * thick / 10
    ratio, ratio_u = row_ratio(rows_per_stitch)
    area = KS_WET if washed else KS_DRY
    across, along = 10 * sqrt(area / ratio) / loop, 10 * sqrt(area * ratio) / loop
    by_ratio = ratio_u / ratio / 2
    return GaugeAhead(
        Figure(loop, "cm", {"the knitter's hand": loop * hand_share}),
        _by_hand(across, "st/10 cm", hand_share, -by_ratio),
        _by_hand(along, "rows/10 cm", hand_share, by_ratio),
    )


def row_ratio(rows_per_stitch: float | None) -> tuple[float, float]:
    """Rows per stitch and their standard uncertainty: her own taken as exact, else the usual."""
    if rows_per_stitch is None:
        return ROWS_PER_STITCH, ROWS_PER_STITCH_U
    return positive(rows_per_stitch, "rows/stitch"), 0.0


def _by_hand(count: float, unit: str, hand_share: float, by_ratio: float) -> Figure:
    causes = {"the knitter's hand": -count * hand_share, "rows per stitch": count * by_ratio}
    return Figure(count, unit, causes)
