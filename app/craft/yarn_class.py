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
from app.craft.working import Standing, Step

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


@dataclass(frozen=True, slots=True)
class ClassOpinion:
    """What grist, gauge and wraps each say of a yarn's class (none where it was not given), the
    classes grist and gauge agree on, a sentence, and the working."""

    by_grist: tuple[YarnClass, ...]
    by_gauge: tuple[YarnClass, ...]
    by_wraps: tuple[YarnClass, ...]
    agreed: tuple[YarnClass, ...]
    sentence: str
    steps: tuple[Step, ...]


def class_opinion(
    tex: float, stitches_per_10cm: float | None = None, wraps_per_inch: float | None = None
) -> ClassOpinion:
    """The class of a yarn from its tex and, where known, its gauge and wraps.

    Grist and gauge decide together, wraps are evidence. ValueError for zero or less.
    """
    grist = by_grist(tex)
    gauge = by_gauge(stitches_per_10cm) if stitches_per_10cm is not None else ()
    wraps = by_wraps(wraps_per_inch) if wraps_per_inch is not None else ()
    agreed = tuple(one for one in grist if one in gauge or not gauge)
    sentence = _sentence(grist, gauge, agreed)
    if wraps and not set(wraps) & set(grist):
        sentence += (
            f"; its wraps say {_either(wraps)}: the yarn is {_loft(grist, wraps)} than usual"
        )
    steps = [_step("grist", f"{from_tex('yd/lb', tex):.0f} yd/lb", grist)]
    if stitches_per_10cm is not None:
        in_4_inches = in_measure(stitches_per_10cm, "4 in")
        steps.append(_step("gauge", f"{in_4_inches:.1f} stitches in 4 in", gauge))
    if wraps_per_inch is not None:
        steps.append(_step("wraps", f"{wraps_per_inch:g} wraps per inch", wraps))
    return ClassOpinion(grist, gauge, wraps, agreed, sentence, tuple(steps))


def class_sentence(tex: float, stitches_per_10cm: float | None = None) -> str:
    """The class in words, and what grist and gauge make of it where they differ."""
    return class_opinion(tex, stitches_per_10cm).sentence


def _sentence(
    grist: tuple[YarnClass, ...], gauge: tuple[YarnClass, ...], agreed: tuple[YarnClass, ...]
) -> str:
    if not gauge:
        return f"{_either(grist)} by its grist"
    if agreed:
        return f"{_either(agreed)} by its grist and its gauge"
    fabric = "more open" if gauge[0].number > grist[0].number else "firmer"
    return (
        f"{_either(grist)} by its grist, {_either(gauge)} by its gauge: "
        f"knit like this the fabric is {fabric} than is usual for the yarn"
    )


def _loft(grist: tuple[YarnClass, ...], wraps: tuple[YarnClass, ...]) -> str:
    return "loftier" if wraps[0].number > grist[0].number else "denser"


def _step(by: str, what: str, classes: tuple[YarnClass, ...]) -> Step:
    sources = "; ".join(dict.fromkeys(one.source for one in classes))
    remembered = any(one.standing == "memory" for one in classes)
    standing: Standing = "memory" if remembered else "published"
    how = f"{what}: {_either(classes)}"
    number = float(classes[0].number)
    return Step(f"Class by {by}", how, number, "of 0 to 7", None, sources, standing)


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
