"""A written pattern: its sizes with what they measure, count and state, at its own gauge."""

from dataclasses import dataclass
from datetime import date

from app.book.gauge import Gauge
from app.book.words import Place


@dataclass(frozen=True, slots=True)
class SizePart:
    """A piece in one size: stitches cast on, stitches where it is widest, rows, length in mm;
    None for what the pattern does not say."""

    name: str
    place: Place = ""
    copies: int = 1
    cast_on: int | None = None
    widest: int | None = None
    rows: int | None = None
    length_mm: int | None = None


@dataclass(frozen=True, slots=True)
class PatternSize:
    """A size: the finished width around in mm, and the yarn stated for it in mm, if it is."""

    name: str
    width_mm: int
    stated_mm: int | None = None
    parts: tuple[SizePart, ...] = ()


@dataclass(frozen=True, slots=True)
class Share:
    """What a part takes of a stated total, in percent."""

    name: str
    pct: float


@dataclass(frozen=True, slots=True)
class Pattern:
    """`gauge` is the one its counts are written for; `source` tells where it was printed."""

    id: str
    name: str
    gauge: Gauge
    source: str = ""
    sizes: tuple[PatternSize, ...] = ()
    shares: tuple[Share, ...] = ()
    put_away: date | None = None
    notes: str = ""
