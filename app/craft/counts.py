"""Counts of yarn: every system the trade numbers its yarns by, to and from tex.

Tex is grams per 1000 m (ISO 1144). A direct count is a mass per length, so thicker yarn has the
higher number; an indirect count is a length per mass. Either way one factor k serves:
tex = k·N (direct) or k/N (indirect), with k = 1000·mass/length of the system's own units.
"""

from dataclasses import dataclass
from math import fsum
from typing import Literal

from app.craft.domain import positive
from app.craft.working import Standing

POUND_G = 453.59237
YARD_M = 0.9144
OUNCE_G = POUND_G / 16
GRAIN_G = POUND_G / 7000

DEFINITION = "its definition, with the exact pound and yard"


@dataclass(frozen=True, slots=True)
class Count:
    """A count system: number N means N × `mass_g` per `length_m` (direct) or the inverse.

    `resultant` marks systems whose folded yarns are numbered by the finished yarn (40/2 is 40);
    `also` are other words for the number.
    """

    name: str
    kind: Literal["direct", "indirect"]
    mass_g: float
    length_m: float
    standing: Standing
    source: str
    resultant: bool = False
    also: str = ""

    @property
    def k(self) -> float:
        """tex = k·N or k/N."""
        return 1000 * self.mass_g / self.length_m


def _per_pound(name: str, yards: float, standing: Standing, source: str, also: str = "") -> Count:
    return Count(name, "indirect", POUND_G, yards * YARD_M, standing, source, also=also)


_ISO = "ISO 1144"
_HANKS = "Brooks, Cotton Manufacturing"
_MEMORY = "definition remembered, not seen"

COUNTS: dict[str, Count] = {
    count.name: count
    for count in (
        Count("tex", "direct", 1, 1000, "published", _ISO),
        Count("dtex", "direct", 1, 10_000, "published", _ISO, also="decitex"),
        Count("denier", "direct", 1, 9000, "published", _ISO, also="den"),
        Count("grains per yard", "direct", GRAIN_G, YARD_M, "derived", DEFINITION),
        Count("jute", "direct", POUND_G, 14_400 * YARD_M, "derived", DEFINITION),
        Count("metric", "indirect", 1, 1, "published", _ISO, also="Nm"),
        _per_pound("cotton", 840, "published", _HANKS, "Ne, hank"),
        _per_pound("worsted", 560, "published", _HANKS, "hank"),
        _per_pound("linen", 300, "published", _HANKS, "lea"),
        _per_pound("Yorkshire skein", 256, "published", "a printed table of textile units"),
        _per_pound("woollen run", 1600, "memory", _MEMORY),
        _per_pound("woollen cut", 300, "memory", _MEMORY),
        _per_pound("Galashiels cut", 200, "memory", _MEMORY),
        _per_pound("West of England snap", 320, "memory", _MEMORY),
        Count("spun silk", "indirect", POUND_G, 840 * YARD_M, "published", _HANKS, resultant=True),
        Count("French cotton", "indirect", 500, 1000, "published", _HANKS),
        _per_pound("yd/lb", 1, "derived", DEFINITION),
        Count("yd/oz", "indirect", OUNCE_G, YARD_M, "derived", DEFINITION),
        Count("m/100 g", "indirect", 100, 1, "derived", DEFINITION),
        Count("m/50 g", "indirect", 50, 1, "derived", DEFINITION),
        Count("yd/100 g", "indirect", 100, YARD_M, "derived", DEFINITION),
    )
}


def count_system(name: str) -> Count:
    """The count system of that name; ValueError for one that is not known."""
    if name not in COUNTS:
        raise ValueError(f"no count system is called {name!r}")
    return COUNTS[name]


def to_tex(system: str, number: float) -> float:
    """Linear density in tex of a yarn of that number; ValueError for zero, less or unknown."""
    count = count_system(system)
    positive(number, f"a {system} count")
    return count.k * number if count.kind == "direct" else count.k / number


def from_tex(system: str, tex: float) -> float:
    """The yarn's number in a system, from its linear density in tex; ValueError as `to_tex`."""
    count = count_system(system)
    positive(tex, "linear density in tex")
    return tex / count.k if count.kind == "direct" else count.k / tex


def plied(system: str, *numbers: float) -> float:
    """The number of yarns twisted together, take-up apart: direct counts add, indirect add as
    reciprocals (Brooks, Cotton Manufacturing). ValueError for no yarn or a number not above 0."""
    if not numbers:
        raise ValueError("plying needs at least one yarn")
    for number in numbers:
        positive(number, f"a {system} count")
    if count_system(system).kind == "direct":
        return fsum(numbers)
    return 1 / fsum(1 / number for number in numbers)


def folded(system: str, number: float, plies: int) -> float:
    """The finished yarn's number of a folded yarn as written: 2/40 cotton is 20, 40/2 spun silk
    is 40 (Taylor, Cotton Weaving and Designing). ValueError as `plied`."""
    singles = plied(system, *[number] * plies)
    return number if count_system(system).resultant else singles


def tex_of(mass_g: float, length_m: float) -> float:
    """Linear density in tex = 1000·m/L (ISO 1144) from g and m, both above zero."""
    return 1000 * positive(mass_g, "mass in g") / positive(length_m, "length in m")


def metres_per_100g(tex: float) -> float:
    """Grist in m/100 g from tex above zero."""
    return from_tex("m/100 g", tex)


def yards_per_pound(tex: float) -> float:
    """Grist in yd/lb from tex above zero."""
    return from_tex("yd/lb", tex)
