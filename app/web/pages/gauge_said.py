"""A gauge in words: one home for them, wherever a gauge is told."""

from app.book.gauge import Gauge
from app.craft.gauge import in_measure
from app.web.shown import Shown

MEASURE_WORDS = {"10 cm": "10\u202fcm", "4 in": "4\u202finches"}


def gauge_said(gauge: Gauge, shown: Shown) -> str:
    """ "22 × 30 in 10 cm, washed", in the measure of the settings."""
    return f"{counts_said(gauge.stitches, gauge.rows, shown)}, {_state(gauge)}"


def counts_said(stitches: float, rows: float, shown: Shown) -> str:
    """ "22 × 30 in 10 cm" from stitches and rows in 10 cm."""
    across, along = stitches_said(stitches, shown), stitches_said(rows, shown)
    return f"{across} × {along} in {measure_said(shown)}"


def stitches_said(per_10cm: float, shown: Shown) -> str:
    """Stitches or rows from those in 10 cm, in the measure of the settings, to a tenth."""
    return shown.number(in_measure(per_10cm, shown.settings.gauge_unit), 1, least=0)


def measure_said(shown: Shown) -> str:
    """What a gauge is counted over."""
    return MEASURE_WORDS[shown.settings.gauge_unit]


def _state(gauge: Gauge) -> str:
    if gauge.assumed_pct:
        return "a guess"
    return "washed" if gauge.washed else "not washed yet"
