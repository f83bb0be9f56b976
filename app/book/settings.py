"""How the maker wants things reckoned and shown."""

from dataclasses import dataclass, field
from typing import Literal

from app.book.plan import Losses


@dataclass(frozen=True, slots=True)
class StepLosses:
    """Share of the mass lost at each step from fleece to yarn, in percent.

    The defaults are common practice, no source; `skirt`: raw to skirted; `carded`, `combed`:
    scoured to prepared; `spin`: prepared to bobbin; `finish`: spun to finished yarn;
    `ply_shrink`: length lost in finishing; `take_up`: length lost in plying.
    """

    skirt: float = 15.0
    carded: float = 7.0
    combed: float = 25.0
    spin: float = 3.0
    finish: float = 2.0
    ply_shrink: float = 8.0
    take_up: float = 5.0


@dataclass(frozen=True, slots=True)
class Prices:
    """What the maker would rather avoid when skeins are given to parts, against each other.

    `join` a change of skein, `cut` a skein shared by two parts, `scrap` a left-over shorter than
    `scrap_below_mm`, `unlike` ten metres of a part in a yarn that was not meant for it.
    """

    join: float = 1.0
    cut: float = 2.0
    scrap: float = 1.5
    scrap_below_mm: int = 10_000
    unlike: float = 1.0


@dataclass(frozen=True, slots=True)
class Settings:
    """Units of display, number format, wanted sureness, losses and the maker's reel.

    `evening_minutes` is the time she has for wool on an evening.
    """

    length_unit: Literal["m", "yd"] = "m"
    mass_unit: Literal["g", "oz"] = "g"
    grist_unit: Literal["m/100 g", "yd/lb", "tex"] = "m/100 g"
    gauge_unit: Literal["10 cm", "4 in"] = "10 cm"
    decimal: Literal[".", ","] = "."
    paper: Literal["A4", "Letter"] = "A4"
    sureness_pct: float = 90.0
    girth_mm: int = 1500
    losses: Losses = field(default_factory=Losses)
    steps: StepLosses = field(default_factory=StepLosses)
    prices: Prices = field(default_factory=Prices)
    evening_minutes: int = 120
