"""A wheel or spindle to spin with."""

from dataclasses import dataclass
from datetime import date

from app.book.words import WheelKind


@dataclass(frozen=True, slots=True)
class Ratio:
    """Turns of the flyer to one of the wheel."""

    value: float


@dataclass(frozen=True, slots=True)
class Wheel:
    """`bobbin_mg` is what a bobbin, or the cop of a spindle, holds at most."""

    id: str
    name: str
    kind: WheelKind = "wheel"
    ratios: tuple[Ratio, ...] = ()
    bobbin_mg: int | None = None
    notes: str = ""
    put_away: date | None = None
