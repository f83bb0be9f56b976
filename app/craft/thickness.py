"""How thick a yarn is: wraps per inch, the class it belongs to, and the diameter twist works on.

There are two diameters and they are never converted into each other. Handspinners wrap a ruler
loosely, yarn just touching; the weavers' diameters per inch (Ashenhurst) are of compressed yarn
and come out more than twice as many.
"""

from math import sqrt

from app.craft.counts import from_tex, to_tex
from app.craft.domain import positive
from app.craft.figure import Figure

WRAPS = 0.376
"""Wraps per inch per √(yd/lb): fits the borders of the handspun chart (derived)."""

WRAPS_SHARE = 0.10
"""Standard uncertainty of wraps found from grist, within one class (practice)."""

LOFT = "loft of the yarn"
"""Why two yarns of one grist wrap differently."""

INCH_MM = 25.4

WOOL_CM3_PER_G = 1.27
"""Volume of a gram of twisted wool yarn (practice)."""

TWIST_DIAMETER = 0.0356825
"""Diameter in mm per √(tex·cm³/g) of a round yarn: 2·√(1e-3/π)."""


def wraps_from_tex(tex: float) -> float:
    """Wraps per inch as handspinners wrap, from tex above zero; u 10 %."""
    return WRAPS * sqrt(from_tex("yd/lb", tex))


def tex_from_wraps(wraps_per_inch: float) -> float:
    """Linear density in tex from wraps per inch above zero; u 20 %, being a square."""
    return to_tex("yd/lb", (positive(wraps_per_inch, "wraps per inch") / WRAPS) ** 2)


def wraps_expected(tex: float) -> Figure:
    """Wraps per inch to expect of a yarn of that tex, with their range of 10 %."""
    wraps = wraps_from_tex(tex)
    return Figure(wraps, "wraps/in", {LOFT: wraps * WRAPS_SHARE})


def tex_expected(wraps_per_inch: float) -> Figure:
    """Linear density in tex to expect of a yarn of so many wraps, with its range of 20 %."""
    tex = tex_from_wraps(wraps_per_inch)
    return Figure(tex, "tex", {LOFT: -2 * tex * WRAPS_SHARE})


def wraps_diameter_mm(wraps_per_inch: float) -> float:
    """Diameter in mm of loosely wrapped yarn, the one a knitting needle meets: 25.4/WPI."""
    return INCH_MM / positive(wraps_per_inch, "wraps per inch")


def twist_diameter_mm(tex: float, cm3_per_g: float = WOOL_CM3_PER_G) -> float:
    """Diameter in mm of the twisted yarn itself, for twist angles only: 0.0357·√(tex·v)."""
    volume = positive(cm3_per_g, "volume of a gram of yarn")
    return TWIST_DIAMETER * sqrt(positive(tex, "linear density in tex") * volume)
