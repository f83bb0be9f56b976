"""Readings of a skein as they are taken, and the one that counts for its length."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from app.book.ids import new_id
from app.book.reading import Reading
from app.book.words import Instrument, ReadingState


@dataclass(frozen=True, slots=True)
class Weight:
    """`mg` as weighed, with what was typed, the unit it was understood in, and the minute of the
    day where that matters."""

    mg: int
    typed: str
    unit: str
    wool: ReadingState = "dry"
    instrument: Instrument = "scale"
    minute: int | None = None


@dataclass(frozen=True, slots=True)
class Length:
    """`mm` of yarn; one taken by reel keeps its girth and turns."""

    mm: int
    typed: str
    unit: str
    finished: bool = True
    girth_mm: int | None = None
    turns: float | None = None
    instrument: Instrument = "tape"


@dataclass(frozen=True, slots=True)
class Wraps:
    """`thousandths` of a wrap per inch."""

    thousandths: int
    typed: str


def by_reel(girth_mm: int, turns: float, typed: str, finished: bool = True) -> Length:
    """Length = turns × girth (the principle of ISO 2060), in mm."""
    return Length(round(girth_mm * turns), typed, "turns", finished, girth_mm, turns, "reel")


def mass_reading(holding_id: str, weight: Weight, day: date) -> Reading:
    return Reading(
        id=new_id(),
        holding_id=holding_id,
        kind="mass",
        value=weight.mg,
        typed=weight.typed,
        unit=weight.unit,
        instrument=weight.instrument,
        day=day,
        wool=weight.wool,
        minute=weight.minute,
    )


def length_reading(holding_id: str, length: Length, day: date) -> Reading:
    return Reading(
        id=new_id(),
        holding_id=holding_id,
        kind="length",
        value=length.mm,
        typed=length.typed,
        unit=length.unit,
        instrument=length.instrument,
        day=day,
        finished=length.finished,
        girth_mm=length.girth_mm,
        turns=length.turns,
    )


def wraps_reading(holding_id: str, wraps: Wraps, day: date) -> Reading:
    return Reading(
        id=new_id(),
        holding_id=holding_id,
        kind="wraps",
        value=wraps.thousandths,
        typed=wraps.typed,
        unit="wraps per inch",
        instrument="gauge",
        day=day,
    )


def counting(readings: Iterable[Reading]) -> Reading | None:
    """The length that counts: the latest finished one, else the latest; None without any."""
    lengths = [one for one in readings if one.kind == "length"]
    return max(lengths, key=lambda one: (one.finished, one.day, one.id), default=None)


def unfinished(readings: Iterable[Reading]) -> bool:
    """True where only a length before finishing is known: the finished one will be shorter."""
    found = counting(readings)
    return found is not None and not found.finished
