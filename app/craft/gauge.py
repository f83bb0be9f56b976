"""Gauge: stitches and rows in a measure. In 4 inches there are 1.6 % more than in 10 cm, so a
count without its measure is not a gauge."""

from math import sqrt

from app.craft.domain import positive
from app.craft.figure import Figure
from app.craft.working import Step

TEN_CM_IN = {"10 cm": 1.0, "4 in": 100 / 101.6}
"""10 cm in each measure: 4 inches are 101.6 mm (the inch is 25.4 mm by definition)."""

HALF_STITCH = 0.5
"""A count over a swatch is right to half a stitch or row at either edge together (practice)."""

TAPE_MM = 1.0
"""Standard uncertainty of a width or length measured on a swatch, in mm (practice)."""


def per_10cm(count: float, measure: str) -> float:
    """Stitches or rows in 10 cm from those in "10 cm" or "4 in".

    ValueError for another measure or a count that is not above zero.
    """
    return positive(count, "a gauge") * _share_of(measure)


def in_measure(per_10cm: float, measure: str) -> float:
    """Stitches or rows in "10 cm" or "4 in" from those in 10 cm; ValueError as `per_10cm`."""
    return positive(per_10cm, "a gauge") / _share_of(measure)


def measures_apart(count: float) -> tuple[Step, ...]:
    """One count read in each of the two measures, per 10 cm, so that they can be told apart."""
    return tuple(
        Step(
            f"{count:g} in {measure}",
            f"{count:g} × {share:.4f}",
            per_10cm(count, measure),
            "in 10 cm",
            source="an inch is 25.4 mm by definition",
        )
        for measure, share in TEN_CM_IN.items()
    )


def counted(count: float, over_mm: float, unit: str, cause: str) -> Figure:
    """Stitches or rows in 10 cm from a count over a measured width or length in mm.

    `unit` is "st/10 cm" or "rows/10 cm"; `cause` names the swatch, for errors that are its own.
    A wide swatch makes a sure gauge. ValueError for a count or measure that is not above zero.
    """
    number, over = positive(count, "a count"), positive(over_mm, "the width or length counted")
    found = 100 * number / over
    causes = {
        f"half a stitch or row, {cause}": found * HALF_STITCH / sqrt(3) / number,
        f"the tape, {cause}": -found * TAPE_MM / over,
    }
    return Figure(found, unit, causes)


def _share_of(measure: str) -> float:
    if measure not in TEN_CM_IN:
        raise ValueError(f"a gauge is counted in 10 cm or in 4 in, not in {measure!r}")
    return TEN_CM_IN[measure]
