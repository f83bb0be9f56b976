"""Twist: how much, at what angle, how much length it takes up, and how to put it in.

The diameter here is that of the twisted yarn itself, never the wraps diameter, which is of yarn
lying loose and would nearly double the angle.
"""

from math import atan, cos, degrees, pi, radians, sqrt

from app.craft.counts import to_tex
from app.craft.domain import not_negative, positive, share
from app.craft.thickness import WOOL_CM3_PER_G, twist_diameter_mm

INCH_CM = 2.54


def per_inch(turns_per_cm: float) -> float:
    """Turns per inch from turns per cm."""
    return turns_per_cm * INCH_CM


def twist_factor(turns_per_cm: float, tex: float) -> float:
    """τ·√tex, in turns/cm·√tex: yarns of one factor are twisted alike, thick or thin."""
    turns = not_negative(turns_per_cm, "twist")
    return turns * sqrt(positive(tex, "linear density in tex"))


def turns_for(factor: float, tex: float) -> float:
    """Turns per cm that give a yarn of that tex a twist factor."""
    return not_negative(factor, "the twist factor") / sqrt(positive(tex, "linear density in tex"))


def english_multiplier(factor: float) -> float:
    """The multiplier of cotton spinners, turns per inch per √Ne, from a tex twist factor."""
    return factor * INCH_CM / sqrt(to_tex("cotton", 1))


def twist_angle(turns_per_cm: float, tex: float, cm3_per_g: float = WOOL_CM3_PER_G) -> float:
    """Angle in degrees of the surface fibres to the yarn: tan α = π·d·τ, d of the twisted yarn."""
    diameter_cm = twist_diameter_mm(tex, cm3_per_g) / 10
    return degrees(atan(pi * diameter_cm * not_negative(turns_per_cm, "twist")))


def contraction_of(angle: float) -> float:
    """Length before over length after twisting a strand to that angle in degrees below 90:
    (1 + sec α)/2 (Hearle). Plying against the singles' twist is another matter: measure it."""
    if not 0 <= angle < 90:
        raise ValueError(f"a twist angle lies between 0 and 90 degrees, not {angle:g}")
    return (1 + 1 / cos(radians(angle))) / 2


def twist_take_up(angle: float) -> float:
    """Share of length that twisting takes up: tan²(α/2) (Hearle)."""
    return take_up_of(contraction_of(angle))


def take_up_of(contraction: float) -> float:
    """Take-up t = (L₀ − L)/L₀ from contraction c = L₀/L of at least 1: t = 1 − 1/c."""
    if contraction < 1:
        raise ValueError(f"contraction is at least 1, not {contraction:g}")
    return 1 - 1 / contraction


def contraction_from(take_up: float) -> float:
    """Contraction c = 1/(1−t) from take-up. A printed "10 % contraction" is c − 1, not t."""
    return 1 / (1 - share(take_up, "take-up"))


def balanced_ply_twist(singles_per_cm: float, plies: int) -> float:
    """Turns per cm at which a ply hangs straight: n/(n+1) of the singles' (practice; Ross).
    ValueError for fewer than two plies."""
    if plies < 2:
        raise ValueError(f"a plied yarn has at least two plies, not {plies}")
    return not_negative(singles_per_cm, "twist") * plies / (plies + 1)


def wheel_turns_per_inch(ratio: float, treadles: float, inches: float) -> float:
    """Turns per inch put in by a wheel: ratio × treadles over the inches drafted meanwhile."""
    turns = positive(ratio, "the ratio of the wheel") * not_negative(treadles, "treadles")
    return turns / positive(inches, "the length drafted")
