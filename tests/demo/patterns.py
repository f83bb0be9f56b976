"""The demo's written pattern: a plain pullover in five sizes, from the maker's notebook."""

from app.book.gauge import Gauge
from app.book.pattern import Pattern, PatternSize, SizePart
from tests.demo.diary import Diary

SIZES = {
    "XS": (880, 176, 44, 66, 268, 930),
    "S": (960, 192, 46, 70, 284, 1_040),
    "M": (1040, 208, 48, 76, 304, 1_160),
    "L": (1120, 224, 50, 80, 320, 1_270),
    "XL": (1200, 240, 52, 86, 344, 1_400),
}
"""Width in mm; stitches of the body, of a sleeve at wrist and upper arm, of the yoke where it is
joined; metres stated. The neck has 80 stitches in every size."""


def keep_patterns(diary: Diary) -> None:
    """One pattern, written for a finer gauge than most garments here are knit to."""
    diary.add(
        Pattern(
            diary.new_id(),
            "Weekday pullover",
            Gauge(20.0, 27.0, needle_mm=4.5),
            source="the smallholding's notebook, 2019",
            sizes=tuple(_size(name, *row) for name, row in SIZES.items()),
            notes="Body and sleeves in the round to the underarm, then one yoke.",
        )
    )


def _size(
    name: str, width_mm: int, body: int, wrist: int, arm: int, joined: int, stated_m: int
) -> PatternSize:
    parts = (
        SizePart("Body", cast_on=body, length_mm=400),
        SizePart("Sleeves", copies=2, cast_on=wrist, widest=arm, length_mm=450),
        SizePart("Yoke", cast_on=joined, widest=80, rows=60),
        SizePart("Neck band", cast_on=80, rows=8),
    )
    return PatternSize(name, width_mm, stated_m * 1000, parts)
