"""What a yarn's twist suits, whether a ply is balanced, and how to put a twist in at the wheel."""

from dataclasses import dataclass
from functools import cache
from typing import cast

from app.craft.domain import not_negative, positive
from app.craft.tables import table
from app.craft.thickness import twist_diameter_mm
from app.craft.twist import (
    INCH_CM,
    balanced_ply_twist,
    english_multiplier,
    turns_for,
    twist_angle,
    twist_factor,
    twist_take_up,
)
from app.craft.working import Standing, Step

NEAR_BALANCE = 0.10
"""A ply within this share of its balanced twist hangs straight once it is washed (practice)."""


@dataclass(frozen=True, slots=True)
class TwistUse:
    """A use with its band of twist factors, in turns/cm·√tex; bands overlap."""

    use: str
    low: float
    high: float
    standing: Standing
    source: str

    def turns(self, tex: float) -> tuple[float, float]:
        """Turns per cm of the band in a yarn of that tex, low to high."""
        return turns_for(self.low, tex), turns_for(self.high, tex)


@cache
def twist_uses() -> tuple[TwistUse, ...]:
    """Every use, softest first."""
    return tuple(
        TwistUse(
            row["use"],
            float(row["factor_low"]),
            float(row["factor_high"]),
            cast(Standing, row["standing"]),
            row["source"],
        )
        for row in table("twist_uses")
    )


@dataclass(frozen=True, slots=True)
class TwistTold:
    """A yarn's twist: factor, angle in degrees, share of length it takes up in a strand, the uses
    whose band it falls in (none where it falls in no band), and the working."""

    factor: float
    angle: float
    take_up: float
    uses: tuple[TwistUse, ...]
    steps: tuple[Step, ...]


def twist_told(turns_per_cm: float, tex: float) -> TwistTold:
    """All that a twist tells of a yarn of that tex. ValueError for a twist below zero or no tex."""
    factor, angle = twist_factor(turns_per_cm, tex), twist_angle(turns_per_cm, tex)
    take_up = twist_take_up(angle)
    uses = tuple(one for one in twist_uses() if one.low <= factor <= one.high)
    suits = ", or ".join(one.use for one in uses) or "no usual use"
    steps = (
        Step("Twist factor", f"{turns_per_cm:.3g} × √{tex:.0f}", factor, "turns/cm·√tex"),
        Step("By √Ne", f"{factor:.1f} ÷ 9.567", english_multiplier(factor), "turns/in per √Ne"),
        Step("Angle", f"tan α = π × {twist_diameter_mm(tex):.3f} mm × twist", angle, "°"),
        Step("Taken up", f"tan²({angle:.1f}° ÷ 2)", 100 * take_up, "%", None, "Hearle"),
        Step("Suits", suits, factor, "turns/cm·√tex", None, twist_uses()[0].source, "practice"),
    )
    return TwistTold(factor, angle, take_up, uses, steps)


@dataclass(frozen=True, slots=True)
class Balance:
    """A ply's twist as a share of the balanced one, the balanced turns per cm, and a word."""

    share: float
    balanced_per_cm: float
    word: str
    step: Step


def balance(singles_per_cm: float, ply_per_cm: float, plies: int) -> Balance:
    """Whether a ply is twisted as much as its singles ask for, n/(n+1) of theirs (practice).

    ValueError for fewer than two plies, singles without twist, or a twist below zero.
    """
    wanted = balanced_ply_twist(positive(singles_per_cm, "the singles' twist"), plies)
    share = not_negative(ply_per_cm, "the ply's twist") / wanted
    word = "balanced"
    if share < 1 - NEAR_BALANCE:
        word = "plied too little: it turns on as it hangs, towards its ply"
    elif share > 1 + NEAR_BALANCE:
        word = "plied too much: it turns back as it hangs"
    how = f"{ply_per_cm:g} ÷ ({singles_per_cm:g} × {plies} ÷ {plies + 1}): {word}"
    source = "common practice; Ross"
    step = Step("Share of the balanced ply twist", how, share, "times", None, source, "practice")
    return Balance(share, wanted, word, step)


def treadles_for_draft(turns_per_cm: float, ratio: float, draft_cm: float) -> float:
    """Treadles while a draft of so many cm runs in, at a wheel's ratio. ValueError for a ratio or
    a draft that is not above zero."""
    turns = not_negative(turns_per_cm, "twist") * positive(draft_cm, "the length drafted")
    return turns / positive(ratio, "the ratio of the wheel")


def draft_for_treadles(turns_per_cm: float, ratio: float, treadles: float) -> float:
    """The draft in cm for so many treadles at a wheel's ratio. ValueError for a number that is not
    above zero."""
    turns = positive(ratio, "the ratio of the wheel") * positive(treadles, "treadles")
    return turns / positive(turns_per_cm, "twist")


def wheel_step(turns_per_cm: float, ratio: float, draft_cm: float) -> Step:
    """The working of `treadles_for_draft`."""
    found = treadles_for_draft(turns_per_cm, ratio, draft_cm)
    per_inch = turns_per_cm * INCH_CM
    how = f"{turns_per_cm:g} per cm ({per_inch:.1f} per inch) × {draft_cm:g} cm ÷ {ratio:g}"
    return Step("Treadles to a draft", how, found, "treadles")
