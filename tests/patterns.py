"""A written pattern to test with: a round-yoke pullover in five sizes at 22 × 30 in 10 cm."""

from typing import Any

from app.book.gauge import Gauge
from app.book.pattern import Pattern, PatternSize, SizePart

SIZES = {
    "1": (880, 194, 46, 72, 1_050_000),
    "2": (960, 212, 48, 76, 1_180_000),
    "3": (1040, 229, 50, 80, 1_310_000),
    "4": (1120, 246, 52, 86, 1_450_000),
    "5": (1200, 264, 54, 92, 1_600_000),
}
"""By name: width in mm, stitches of the body, of the sleeve at wrist and upper arm, stated mm."""


def a_size(name: str) -> PatternSize:
    width, body, wrist, arm, stated = SIZES[name]
    return PatternSize(
        name,
        width,
        stated,
        (
            SizePart("Body", cast_on=body, length_mm=400),
            SizePart("Sleeves", copies=2, cast_on=wrist, widest=arm, length_mm=450),
            SizePart("Yoke", cast_on=body + 2 * arm - 40, widest=90, rows=66),
        ),
    )


def five_sizes(id: str = "yoke pattern", **other: Any) -> Pattern:
    sizes = tuple(a_size(name) for name in SIZES)
    same = {"id": id, "name": "Round-yoke pullover", "gauge": Gauge(22.0, 30.0), "sizes": sizes}
    return Pattern(**same | other)
