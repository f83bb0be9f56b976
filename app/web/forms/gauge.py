"""The gauge fields of a plan or part: stitches and rows in a stated measure, washed, needle."""

from app.book.gauge import Gauge
from app.book.settings import Settings
from app.craft.gauge import TEN_CM_IN
from app.planning.gauges import FIRMNESS_SHARE
from app.web.forms.reader import Reader
from app.web.shown import Shown

MEASURES = {"10 cm": "in 10 cm", "4 in": "in 4 inches"}
WASHED = {
    "yes": "washed and dried flat",
    "no": "not washed yet",
    "guess": "not knit yet: this is a guess",
}

STITCHES = (2.0, 100.0)
ROWS = (2.0, 150.0)
"""Stitches and rows in 10 cm between which a gauge is believed: rope to sewing thread."""

NEEDLE_MM = (0.5, 50.0)


def read_gauge(reader: Reader, old: Gauge | None = None) -> Gauge | None:
    """The gauge typed, per 10 cm whatever it was counted in; None where all was left blank.

    A guess stays as unsure as the `old` one was said to be.
    """
    stitches = reader.number("gauge_stitches")
    rows = reader.number("gauge_rows")
    measure = reader.choice("gauge_measure", MEASURES) or "10 cm"
    swatch = reader.choice("gauge_washed", WASHED)
    needle = reader.number("gauge_needle")
    _within(reader, "gauge_needle", needle, NEEDLE_MM, "A needle", "mm")
    if stitches is None or rows is None:
        _complain_of_half(reader, stitches, rows, needle)
        return None
    factor = TEN_CM_IN[measure]
    guessed = _guessed_pct(old) if swatch == "guess" else 0.0
    gauge = Gauge(stitches * factor, rows * factor, swatch != "no", needle, guessed)
    _within(reader, "gauge_stitches", gauge.stitches, STITCHES, "A gauge", "stitches in 10 cm")
    _within(reader, "gauge_rows", gauge.rows, ROWS, "A gauge", "rows in 10 cm")
    return gauge


def gauge_values(gauge: Gauge | None, settings: Settings) -> dict[str, str]:
    """What the gauge fields hold when a form is opened, in the measure of the settings."""
    measure = settings.gauge_unit
    blank = dict.fromkeys(("gauge_stitches", "gauge_rows", "gauge_needle", "gauge_swatch"), "")
    if gauge is None:
        return {**blank, "gauge_washed": "yes", "gauge_measure": measure}
    shown, factor = Shown(settings), TEN_CM_IN[measure]
    return {
        "gauge_stitches": shown.field_number(round(gauge.stitches / factor, 4)),
        "gauge_rows": shown.field_number(round(gauge.rows / factor, 4)),
        "gauge_measure": measure,
        "gauge_washed": _swatch(gauge),
        "gauge_needle": shown.field_number(gauge.needle_mm),
        "gauge_swatch": gauge.swatch_id or "",
    }


def _swatch(gauge: Gauge) -> str:
    if gauge.assumed_pct:
        return "guess"
    return "yes" if gauge.washed else "no"


def _guessed_pct(old: Gauge | None) -> float:
    return old.assumed_pct if old and old.assumed_pct else 100 * FIRMNESS_SHARE


def _complain_of_half(
    reader: Reader, stitches: float | None, rows: float | None, needle: float | None
) -> None:
    if stitches is not None:
        reader.errors.setdefault("gauge_rows", "Say how many rows as well.")
    elif rows is not None or needle is not None:
        reader.errors.setdefault("gauge_stitches", "Say how many stitches and rows the gauge has.")


def _within(
    reader: Reader,
    field: str,
    value: float | None,
    bounds: tuple[float, float],
    what: str,
    unit: str,
) -> None:
    least, most = bounds
    if value is not None and not least <= value <= most:
        reader.errors.setdefault(field, f"{what} lies between {least:g} and {most:g} {unit}.")
