"""Whether a skein can be believed: a slip of the pen makes yarn that nobody can spin."""

from dataclasses import dataclass
from typing import Literal

from app.craft.counts import to_tex
from app.craft.thickness import wraps_from_tex

THICKEST_TEX, THINNEST_TEX = to_tex("m/100 g", 20), to_tex("m/100 g", 20_000)
"""A rope of roving, and a single as fine as a hair: what lies outside is asked about (practice)."""

WRAPS_FACTOR = 2.0
"""Wraps further from those expected than this many times are asked about (practice)."""


@dataclass(frozen=True, slots=True)
class SkeinDoubt:
    """What is odd: the yarn is too "thin" or too "thick", or its "wraps" are; `tex` by its length
    and weight, `wraps` those to be expected of it."""

    what: Literal["thin", "thick", "wraps"]
    tex: float
    wraps: float


def skein_doubt(mg: int, mm: int, thousandths: int | None = None) -> SkeinDoubt | None:
    """What to ask about so much yarn of so many wraps (thousandths of a wrap per inch); None where
    nothing is odd, or the weight or length is not known."""
    if mg <= 0 or mm <= 0:
        return None
    tex = 1000 * mg / mm
    expected = wraps_from_tex(tex)
    if not THINNEST_TEX <= tex <= THICKEST_TEX:
        return SkeinDoubt("thin" if tex < THINNEST_TEX else "thick", tex, expected)
    if thousandths and not 1 / WRAPS_FACTOR <= thousandths / 1000 / expected <= WRAPS_FACTOR:
        return SkeinDoubt("wraps", tex, expected)
    return None
