"""Sleeves to the underarm: long, three-quarter or short, from the cuff up."""

from dataclasses import dataclass

from app.craft.constructions.bands import CUFF, at_most, edge_band
from app.craft.constructions.drawing import (
    Across,
    Along,
    Band,
    DrawnPiece,
    Impossible,
    KnitRun,
    Places,
    Wanted,
    nearest,
)

SLEEVES = {"long": 1.0, "three-quarter": 0.7, "short": 0.3}
"""How far down the arm a sleeve reaches, as a share of the arm to the underarm (practice)."""

ARM = "arm length to underarm"
SLEEVE_MEASURES = (ARM, "upper arm", "wrist")
SLEEVE_EASES = ("upper arm", "wrist")
SLEEVE_CHOICES = {"sleeve": tuple(SLEEVES)}


@dataclass(frozen=True, slots=True)
class Sleeve:
    """A sleeve's stitches at its lower end and at the underarm, the rows between, and the cuff."""

    lower: int
    upper: int
    rows: int
    cuff: Band

    @property
    def run(self) -> KnitRun:
        return KnitRun(self.rows, self.lower, self.upper)


def sleeve_of(wanted: Wanted, upper: int, every: int, wrist: int | None = None) -> Sleeve:
    """A sleeve that is `upper` stitches at the underarm; `wrist` stitches or as wide as the wrist.
    Impossible where the cuff is longer than the sleeve."""
    reach = SLEEVES[wanted.choices["sleeve"]]
    length = reach * wanted.cm(ARM)
    cuff = at_most(wanted.bands[CUFF], length / 3)
    rows = wanted.knit.along(length - cuff.depth_cm, every)
    if rows < every:
        raise Impossible("nothing left", "the sleeve is too short for its cuff")
    at_wrist = wanted.knit.pairs(wanted.cm("wrist")) if wrist is None else wrist
    narrow = min(at_wrist, upper)
    lower = narrow + 2 * nearest((upper - narrow) * (1 - reach) / 2)
    return Sleeve(lower, upper, rows, cuff)


def sleeve_places(wanted: Wanted, sleeve: Sleeve) -> Places:
    """Where the arm's measures lie; a shorter sleeve does not reach the wrist."""
    reach = SLEEVES[wanted.choices["sleeve"]]
    long = (Across("wrist", ("sleeves",)),) if reach == 1 else ()
    return (
        Across("upper arm", ("sleeves",), sleeve.rows),
        *long,
        Along(ARM, ("cuffs", "sleeves"), until=sleeve.rows, share=reach),
    )


def cuff_below(wanted: Wanted, sleeve: Sleeve, in_round: bool) -> tuple[DrawnPiece, ...]:
    """The cuffs of both sleeves, or nothing."""
    width = wanted.knit.wide(sleeve.lower)
    made = edge_band(
        "cuffs",
        "cuff",
        sleeve.cuff,
        width,
        sleeve.lower,
        in_round=in_round,
        copies=2,
        sewn=not in_round,
    )
    return (made,) if made else ()
