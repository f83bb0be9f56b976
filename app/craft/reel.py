"""Measuring a skein: its length by the reel, its weight by the scale, and how surely.

A reel's length is turns × girth (the principle of ISO 2060). The girth is wrong by the same
amount for every skein wound on it, so that error is named after the reel and stays shared; the
half turn and the scale's half division belong to one skein and are named after it.
"""

from math import sqrt

from app.craft.domain import not_negative, positive
from app.craft.figure import Figure

GIRTH_SHARE = 0.005
"""Standard uncertainty of a reel's girth, as a share (assumed)."""

PILE_UP_SHARE = 0.05
"""Thick yarn piles up and stretches on the reel: 0 to 5 %, one-sided (practice)."""

SHRINK_PRINTED = (0.13, 0.28)
"""Shares of length that finished skeins in print lost (spinners' published measurements)."""


def rectangular(half_width: float) -> float:
    """Standard uncertainty of a value known to lie within ± `half_width` (JCGM 100, 4.3.7)."""
    return half_width / sqrt(3)


def skein_length(girth_m: float, turns: float, finished: bool, skein: str = "") -> Figure:
    """Length in m of a skein wound on a reel; `skein` names it, for errors that are its own.

    `finished` tells that it was measured after wet-finishing and hanging free; otherwise up to
    5 % of pile-up and stretch widens the figure without moving it. ValueError for a girth or a
    number of turns that is not above zero.
    """
    length = positive(girth_m, "the girth of a reel") * positive(turns, "the number of turns")
    causes = {
        f"reel of {girth_m:.2f} m": length * GIRTH_SHARE,
        _of("half a turn", skein): rectangular(girth_m / 2),
    }
    if not finished:
        causes["pile-up and stretch on the reel"] = rectangular(length * PILE_UP_SHARE)
    return Figure(length, "m", causes)


def scale_mass(g: float, division_g: float = 1.0, skein: str = "") -> Figure:
    """Mass in g as read on a scale that shows steps of `division_g`, ± half a step.

    ValueError for a mass below zero or a division that is not above zero.
    """
    half = positive(division_g, "the scale's division") / 2
    not_negative(g, "a mass")
    return Figure(g, "g", {_of("the scale's half division", skein): rectangular(half)})


def shrink_measured(before: Figure, after: Figure) -> Figure:
    """Share of length a skein lost in finishing, from its length in m before and after; what both
    measurements share, such as the reel, cancels. Below zero where it grew. ValueError for a length
    that is not above zero."""
    positive(before.given_in("m").value, "the length before finishing")
    positive(after.given_in("m").value, "the length after finishing")
    return Figure(1.0, "share") - after.per(before, "share")


def shrink_default() -> Figure:
    """Share of length lost in finishing where the maker has no ratio of her own: 12 % ± 8 points
    (practice; wide, because finished skeins in print lost 13 to 28 %)."""
    return Figure(0.12, "share", {"shrinkage in finishing": 0.08})


def _of(cause: str, skein: str) -> str:
    return f"{cause}, {skein}" if skein else cause
