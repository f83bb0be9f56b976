"""How far apart two colours of wool are, and what the eye makes of it.

Colours are compared by CIEDE2000 (Sharma, Wu, Dalal 2005) in L*a*b* under daylight D65, the light
that colours on a screen are made for. A colour picked on a screen is only near that of the wool.
"""

import re
from functools import cache
from typing import Any

from app.craft.working import Step

Lab = tuple[float, float, float]
"""L* (0 black to 100 white), a* (green to red), b* (blue to yellow)."""

HEX = re.compile("#[0-9a-fA-F]{6}")

SOURCE = "CIEDE2000: Sharma, Wu, Dalal 2005"

BANDS = (
    (1.0, "not seen as a difference"),
    (2.0, "seen on close look, side by side"),
    (3.0, "seen side by side"),
)
"""What a difference is to the eye, by its upper end (practice of textile dyers); above them it is
plain."""


def lab(hex_colour: str) -> Lab:
    """L*a*b* of a colour written #rrggbb; ValueError for anything else."""
    if not HEX.fullmatch(hex_colour):
        raise ValueError(f"a colour is written as # and six digits, not {hex_colour!r}")
    lightness, a, b = _space()(hex_colour).convert("lab-d65").coords()
    return (lightness, a, b)


def difference(one: Lab, other: Lab) -> float:
    """CIEDE2000 between two colours; 0 for the same."""
    first = _space()("lab-d65", list(one))
    second = _space()("lab-d65", list(other))
    return float(first.delta_e(second, method="2000", space="lab-d65"))


def difference_word(difference: float) -> str:
    """What a CIEDE2000 difference is to the eye (practice); ValueError below zero."""
    if difference < 0:
        raise ValueError(f"a difference of colours is never below zero, as in {difference:g}")
    return next((word for upper, word in BANDS if difference < upper), "plainly different")


def compared(one: str, other: str) -> Step:
    """Two colours #rrggbb compared, with the working; ValueError as `lab`."""
    first, second = lab(one), lab(other)
    found = difference(first, second)
    how = f"{_told(first)} against {_told(second)}: {difference_word(found)}"
    return Step("Difference of the colours", how, found, "ΔE00", source=SOURCE)


def _told(colour: Lab) -> str:
    return "L* {:.1f}, a* {:.1f}, b* {:.1f}".format(*colour)


@cache
def _space() -> Any:
    """The colour library; loading it takes a fifth of a second, so nobody waits for it unasked."""
    from coloraide import Color

    return Color
