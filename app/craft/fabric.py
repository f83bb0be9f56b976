"""Plain knit fabric: from gauge to the yarn in a stitch, to metres, to how firm it is.

Munden (1959): in plain knit wool the stitches per area S and the yarn in one stitch l are tied
by S = Ks/l², whatever the needle; Ks depends only on how far the fabric has relaxed.
"""

from math import sqrt

from app.craft.domain import not_negative, positive
from app.craft.figure import Figure
from app.craft.relaxation import RELAXED
from app.craft.thickness import tex_from_wraps

KS_DRY = RELAXED["dry-relaxed"].area
KS_WET = RELAXED["wet-relaxed"].area
KS_FULL = RELAXED["fully relaxed"].area

LOOP_SHARE = 0.07
"""Standard uncertainty of a loop length found by geometry, as a share (practice)."""

DISAGREE = 1.5
"""Difference of the two firmnesses from which a yarn is called loftier or denser than usual."""

OPEN_BELOW = 8.0
FIRMNESS = (
    (9.5, "airy"),
    (12.5, "ordinary"),
    (14.0, "close"),
)
"""Bands of firmness by their upper end, stocking stitch in wool (practice); above them: firm."""


def stitches_per_cm2(stitches_per_10cm: float, rows_per_10cm: float) -> float:
    """Stitches in a square centimetre from a gauge per 10 cm, both above zero."""
    stitches = positive(stitches_per_10cm, "stitches in 10 cm")
    return stitches * positive(rows_per_10cm, "rows in 10 cm") / 100


def loop_cm(stitches_per_10cm: float, rows_per_10cm: float, washed: bool = True) -> Figure:
    """Yarn in one stitch, in cm, from the gauge alone: √(Ks/S), Munden 1959, u 7 %.

    `washed`: the swatch was washed and dried flat before it was counted (Ks 21.6, else 19.0).
    ValueError for a gauge that is not above zero.
    """
    ks = KS_WET if washed else KS_DRY
    loop = sqrt(ks / stitches_per_cm2(stitches_per_10cm, rows_per_10cm))
    return Figure(loop, "cm", {"loop length from the gauge": loop * LOOP_SHARE})


def yarn_in(stitches: float, loop: Figure) -> Figure:
    """Metres of yarn in so many stitches of a loop in cm; a row is its stitches."""
    count = not_negative(stitches, "the number of stitches")
    return loop.given_in("cm").scaled(count / 100, "m")


def metres_per_m2(stitches_per_10cm: float, rows_per_10cm: float, loop: Figure) -> Figure:
    """Metres of yarn in a square metre of fabric."""
    return yarn_in(10_000 * stitches_per_cm2(stitches_per_10cm, rows_per_10cm), loop)


def row_per_width(stitches_per_10cm: float, loop: Figure) -> Figure:
    """How many times its own width of yarn a row takes: w·l, about 4."""
    per_cm = positive(stitches_per_10cm, "stitches in 10 cm") / 10
    return loop.given_in("cm").scaled(per_cm, "times")


def firmness(tex: float, loop: float) -> float:
    """K = √tex/l, with l in cm (the tightness factor of knitting): how full of yarn a fabric is."""
    return sqrt(positive(tex, "linear density in tex")) / positive(loop, "loop length in cm")


def firmness_by_wraps(wraps_per_inch: float, loop: float) -> float:
    """The same from the wraps diameter d in cm: d/(0.00959·l), equal to K for yarn of ordinary
    density."""
    return firmness(tex_from_wraps(wraps_per_inch), loop)


def firmness_word(k: float) -> str:
    """The band of a firmness: open, airy, ordinary, close or firm."""
    if k < OPEN_BELOW:
        return "open"
    return next((word for upper, word in FIRMNESS if k <= upper), "firm")


def loft_word(by_tex: float, by_wraps: float) -> str:
    """Empty where the two firmnesses agree; else "loftier" or "denser" than usual."""
    if abs(by_wraps - by_tex) <= DISAGREE:
        return ""
    return "loftier" if by_wraps > by_tex else "denser"
