"""The gauge fields of a plan or part: stitches and rows in a stated measure, washed, needle."""

from dataclasses import replace
from typing import TYPE_CHECKING

from app.book.gauge import Gauge
from app.book.settings import Settings
from app.craft.gauge import TEN_CM_IN
from app.planning.gauges import FIRMNESS_SHARE
from app.web.shown import Shown

if TYPE_CHECKING:
    from app.web.forms.reader import Reader

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

PLACES = 2
DUST = 1e-6
"""Decimals of a gauge in a form, and how near to them a number is that was counted so."""


def read_gauge(reader: "Reader", old: Gauge | None = None) -> Gauge | None:
    """The gauge typed, per 10 cm whatever it was counted in; None where all was left blank.

    What was left as the form showed it stays as it is in the `old` gauge, to the last digit.
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
    typed = Gauge(stitches * factor, rows * factor, swatch != "no", needle, guessed)
    gauge = _as_it_was(reader, typed, old) if old else typed
    _within(reader, "gauge_stitches", gauge.stitches, STITCHES, "A gauge", "stitches in 10 cm")
    _within(reader, "gauge_rows", gauge.rows, ROWS, "A gauge", "rows in 10 cm")
    return gauge


def gauge_values(gauge: Gauge | None, settings: Settings) -> dict[str, str]:
    """What the gauge fields hold when a form is opened: in the measure in which its numbers are
    those one counts, else in that of the settings, to a hundredth."""
    blank = dict.fromkeys(("gauge_stitches", "gauge_rows", "gauge_needle", "gauge_swatch"), "")
    if gauge is None:
        return {**blank, "gauge_washed": "yes", "gauge_measure": settings.gauge_unit}
    shown, measure = Shown(settings), _measure_of(gauge, settings)
    return {
        "gauge_stitches": shown.field_number(round(gauge.stitches / TEN_CM_IN[measure], PLACES)),
        "gauge_rows": shown.field_number(round(gauge.rows / TEN_CM_IN[measure], PLACES)),
        "gauge_measure": measure,
        "gauge_washed": _swatch(gauge),
        "gauge_needle": shown.field_number(gauge.needle_mm),
        "gauge_swatch": gauge.swatch_id or "",
    }


def _measure_of(gauge: Gauge, settings: Settings) -> str:
    for measure in (settings.gauge_unit, *MEASURES):
        counts = [one / TEN_CM_IN[measure] for one in (gauge.stitches, gauge.rows)]
        if all(abs(one - round(one, PLACES)) < DUST for one in counts):
            return measure
    return settings.gauge_unit


def _as_it_was(reader: "Reader", typed: Gauge, old: Gauge) -> Gauge:
    """The gauge typed, with the old one's figures where their fields were left alone."""
    shown = gauge_values(old, reader.settings)
    if reader.as_shown(shown, "gauge_measure", "gauge_stitches"):
        typed = replace(typed, stitches=old.stitches)
    if reader.as_shown(shown, "gauge_measure", "gauge_rows"):
        typed = replace(typed, rows=old.rows)
    if reader.as_shown(shown, "gauge_washed"):
        typed = replace(typed, washed=old.washed, assumed_pct=old.assumed_pct)
    return typed


def _swatch(gauge: Gauge) -> str:
    if gauge.assumed_pct:
        return "guess"
    return "yes" if gauge.washed else "no"


def _guessed_pct(old: Gauge | None) -> float:
    return old.assumed_pct if old and old.assumed_pct else 100 * FIRMNESS_SHARE


def _complain_of_half(
    reader: "Reader", stitches: float | None, rows: float | None, needle: float | None
) -> None:
    if stitches is not None:
        reader.errors.setdefault("gauge_rows", "Say how many rows as well.")
    elif rows is not None or needle is not None:
        reader.errors.setdefault("gauge_stitches", "Say how many stitches and rows the gauge has.")


def _within(
    reader: "Reader",
    field: str,
    value: float | None,
    bounds: tuple[float, float],
    what: str,
    unit: str,
) -> None:
    least, most = bounds
    if value is not None and not least <= value <= most:
        reader.errors.setdefault(field, f"{what} lies between {least:g} and {most:g} {unit}.")
