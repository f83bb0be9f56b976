"""Ranges as they were printed: fineness of fibres, rates of spinning, finishing, losses.

Each row is one source's word on one case. They are to be read beside one's own measurements, which
come first; none is averaged with another.
"""

from dataclasses import dataclass
from functools import cache
from typing import Literal, cast

from app.craft.domain import positive
from app.craft.tables import table
from app.craft.working import Standing

Subject = Literal["fibre_microns", "spinning_rates", "wet_finishing", "step_losses"]

INCH_M = 0.0254


@dataclass(frozen=True, slots=True)
class PrintedRange:
    """A case with its range low to high in `unit`, as it stands in print ("" if remembered)."""

    what: str
    low: float
    high: float
    unit: str
    printed: str
    standing: Standing
    source: str


@cache
def ranges(subject: Subject) -> tuple[PrintedRange, ...]:
    """Every row on a subject: fibres in µm, rates in m/h or g/h, change of length in wet finishing
    in percent (shorter is below zero), losses in percent of the mass named."""
    return tuple(
        PrintedRange(
            row["what"],
            float(row["low"]),
            float(row["high"]),
            row["unit"],
            row["printed"],
            cast(Standing, row["standing"]),
            row["source"],
        )
        for row in table(subject)
    )


def fibres_of(micron: float) -> tuple[PrintedRange, ...]:
    """The fibres whose range holds that diameter in µm; ValueError for zero or less."""
    positive(micron, "a fibre's diameter in µm")
    return tuple(one for one in ranges("fibre_microns") if one.low <= micron <= one.high)


def flyer_rate(turns_per_minute: float, turns_per_inch: float) -> float:
    """Metres an hour a flyer can twist: its turns over the turns in each inch. ValueError for a
    number that is not above zero."""
    each_minute = positive(turns_per_minute, "turns of the flyer per minute")
    inches = 60 * each_minute / positive(turns_per_inch, "turns per inch")
    return inches * INCH_M


def hours_for(amount: float, per_hour: float) -> float:
    """Hours for so many metres or grams at a rate in the same unit per hour. ValueError for an
    amount or a rate that is not above zero."""
    return positive(amount, "what is to be spun") / positive(per_hour, "the rate per hour")
