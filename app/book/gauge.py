"""The gauge (tension) a fabric is knit to."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Gauge:
    """Stitches and rows in 10 cm of width and length.

    `washed` tells whether the swatch was washed and dried flat before it was counted;
    `needle_mm` is the needle's diameter in mm, if known; `assumed_pct` is 0 for a gauge that was
    counted, else the standard uncertainty of the yarn in a stitch of a gauge that was guessed;
    `swatch_id` is the swatch it was taken from: the numbers stay as they were then.
    """

    stitches: float
    rows: float
    washed: bool = True
    needle_mm: float | None = None
    assumed_pct: float = 0.0
    swatch_id: str | None = None
