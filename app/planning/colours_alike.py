"""Which yarns read as one beside each other: of one fibre, about one grist, one colour."""

from functools import lru_cache

from app.book.yarn import Yarn
from app.craft.colour import Lab, difference, lab
from app.planning.yarns import Lots

READS_AS_ONE = 2.0
"""Below this CIEDE2000 difference two colours are told apart only on close look, side by side
(practice of textile dyers)."""

ALIKE_GRIST = 0.10
"""Yarns whose grist differs by more than a tenth do not pass for one in a fabric (practice)."""


def apart(one: str, other: str) -> float:
    """CIEDE2000 between two colours "#rrggbb"."""
    return 0.0 if one == other else difference(lab_of(one), lab_of(other))


def reads_as_one(one: str, other: str, lots: Lots) -> bool:
    """Whether two yarns may be mixed in one piece: fibre, grist and colour alike."""
    if one == other:
        return False
    first, second = lots.book.yarn[one], lots.book.yarn[other]
    if first.fibre.casefold() != second.fibre.casefold() or not _same_grist(one, other, lots):
        return False
    return one_colour(first, second)


def one_colour(one: Yarn, other: Yarn) -> bool:
    """By their colours where both were noted, else by the names of them."""
    if one.colour and other.colour:
        return apart(one.colour, other.colour) < READS_AS_ONE
    return bool(one.colour_name) and one.colour_name.casefold() == other.colour_name.casefold()


@lru_cache(maxsize=1024)
def lab_of(colour: str) -> Lab:
    """A colour "#rrggbb" by lightness and hue (CIELAB), remembered."""
    return lab(colour)


def _same_grist(one: str, other: str, lots: Lots) -> bool:
    first, second = lots.tex(one), lots.tex(other)
    if first is None or second is None:
        return False
    return abs(first.value - second.value) <= ALIKE_GRIST * min(first.value, second.value)
