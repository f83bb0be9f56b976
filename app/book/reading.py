"""A reading: one measurement as it was taken. The best current value is derived, not stored."""

from dataclasses import dataclass
from datetime import date

from app.book.words import Instrument, ReadingKind, ReadingState


@dataclass(frozen=True, slots=True)
class Reading:
    """`value` is in mg for mass, mm for length, thousandths of a wrap per inch for wraps,
    thousandths of a tex for grist.

    `typed` is what was typed, `unit` the unit it was understood in; `finished` tells whether the
    yarn had been wet-finished; a length by reel keeps its `girth_mm` and `turns`;
    `minute` is that of the day, where weighings follow each other within one.
    """

    id: str
    holding_id: str
    kind: ReadingKind
    value: int
    typed: str
    unit: str
    instrument: Instrument
    day: date
    wool: ReadingState = "dry"
    finished: bool = True
    girth_mm: int | None = None
    turns: float | None = None
    minute: int | None = None
