"""A swatch: a piece knit to see what a yarn becomes on a needle, measured and kept."""

from dataclasses import dataclass
from datetime import date

from app.book.gauge import Gauge

STOCKING_STITCH = "stocking stitch"


@dataclass(frozen=True, slots=True)
class Count:
    """Stitches counted over a width and rows over a height, in mm, not whole: 4 in are 101.6."""

    stitches: float
    width_mm: float
    rows: float
    height_mm: float


@dataclass(frozen=True, slots=True)
class Swatch:
    """`worked` is its count off the needles, `finished` washed and dried flat; either may lack.

    `weight_mg` is the dry weight of the whole swatch, on a scale that shows steps of `scale_mg`;
    `whole_stitches` are the stitches in it, the cast-on and the cast-off a row each.
    `thread_mm` is the thread of `unravelled` stitches, at the tension the skeins were reeled at.
    """

    id: str
    name: str
    yarn_id: str | None = None
    needle_mm: float | None = None
    pattern: str = STOCKING_STITCH
    worked: Count | None = None
    finished: Count | None = None
    weight_mg: int | None = None
    scale_mg: int = 1000
    whole_stitches: float | None = None
    unravelled: float | None = None
    thread_mm: int | None = None
    day: date | None = None
    put_away: date | None = None
    notes: str = ""


def gauge_of(swatch: Swatch) -> Gauge | None:
    """The gauge a garment takes from a swatch: washed if it was; None where nothing is counted."""
    count = swatch.finished or swatch.worked
    if count is None:
        return None
    return Gauge(
        stitches=in_10cm(count.stitches, count.width_mm),
        rows=in_10cm(count.rows, count.height_mm),
        washed=swatch.finished is not None,
        needle_mm=swatch.needle_mm,
        swatch_id=swatch.id,
    )


def in_10cm(count: float, over_mm: float) -> float:
    """Stitches or rows in 10 cm from a count over so many mm."""
    return count * 100 / over_mm
