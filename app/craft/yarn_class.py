"""The class of a yarn, Craft Yarn Council 0 to 7, from its grist and from its gauge.

Classes are ranges that meet and overlap; grist and gauge are two opinions and may differ. A class
says what to try, a swatch decides.
"""

from dataclasses import dataclass
from functools import cache
from typing import cast

from app.craft.counts import from_tex
from app.craft.domain import positive
from app.craft.gauge import in_measure
from app.craft.tables import Row, table
from app.craft.working import Standing

OPEN_END = 1e9

DUST = 1e-9
"""Two ranges as near as this are equally near."""

Range = tuple[float, float]


@dataclass(frozen=True, slots=True)
class YarnClass:
    """A class by number and name; its ranges in yd/lb, stitches in 4 in and wraps per inch, open
    at either end of the chart, None where the chart gives none."""

    number: int
    name: str
    yards_per_pound: Range | None
    stitches: Range | None
    wraps: Range | None
    standing: Standing
    source: str

    @property
    def label(self) -> str:
        """Number and name: "4 Medium"."""
        return f"{self.number} {self.name}"


@cache
def yarn_classes() -> tuple[YarnClass, ...]:
    """Every class, finest first."""
    return tuple(_read(row) for row in table("yarn_classes"))


def by_grist(tex: float) -> tuple[YarnClass, ...]:
    """The class or neighbouring classes of a yarn of that tex; ValueError for zero or less."""
    return _nearest("yards_per_pound", from_tex("yd/lb", tex))


def by_gauge(stitches_per_10cm: float) -> tuple[YarnClass, ...]:
    """The class or overlapping classes that are knit at that gauge; ValueError for zero or less."""
    return _nearest("stitches", in_measure(stitches_per_10cm, "4 in"))


def by_wraps(wraps_per_inch: float) -> tuple[YarnClass, ...]:
    """The class or classes of that many wraps per inch; ValueError for zero or less."""
    return _nearest("wraps", positive(wraps_per_inch, "wraps per inch"))


def class_sentence(tex: float, stitches_per_10cm: float | None = None) -> str:
    """The class in words, and what grist and gauge make of it where they differ."""
    grist = by_grist(tex)
    if stitches_per_10cm is None:
        return f"{_either(grist)} by its grist"
    gauge = by_gauge(stitches_per_10cm)
    both = tuple(one for one in grist if one in gauge)
    if both:
        return f"{_either(both)} by its grist and its gauge"
    looser = gauge[0].number > grist[0].number
    fabric = "more open" if looser else "firmer"
    return (
        f"{_either(grist)} by its grist, {_either(gauge)} by its gauge: "
        f"knit like this the fabric is {fabric} than is usual for the yarn"
    )


def _either(classes: tuple[YarnClass, ...]) -> str:
    return " or ".join(one.label for one in classes)


def _nearest(column: str, value: float) -> tuple[YarnClass, ...]:
    """Classes whose range holds the value; between two ranges, the nearer."""
    known = [(one, cast(Range, span)) for one in yarn_classes() if (span := getattr(one, column))]
    off = [(max(low - value, value - high, 0.0), one) for one, (low, high) in known]
    least = min(distance for distance, _ in off)
    return tuple(one for distance, one in off if distance <= least + DUST)


def _read(row: Row) -> YarnClass:
    return YarnClass(
        int(row["number"]),
        row["name"],
        _range(row, "yd_lb"),
        _range(row, "stitches"),
        _range(row, "wraps"),
        cast(Standing, row["standing"]),
        row["source"],
    )


def _range(row: Row, column: str) -> Range | None:
    low, high = row[f"{column}_low"], row[f"{column}_high"]
    return (float(low or 0), float(high or OPEN_END)) if low or high else None
