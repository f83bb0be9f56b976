"""What a square metre of knitted fabric holds and how full of yarn it is, with the working."""

from dataclasses import dataclass

from app.craft.fabric import (
    firmness,
    firmness_by_wraps,
    firmness_word,
    loft_word,
    metres_per_m2,
    stitches_per_cm2,
)
from app.craft.figure import Figure
from app.craft.working import Step

BANDS = "bands for stocking stitch in wool: common practice"


@dataclass(frozen=True, slots=True)
class Cloth:
    """Metres and grams in a square metre, cm and grams in one stitch."""

    m_per_m2: Figure
    g_per_m2: Figure
    cm_per_stitch: Figure
    g_per_stitch: Figure
    steps: tuple[Step, ...]


def square_metre(
    stitches_per_10cm: float, rows_per_10cm: float, loop: Figure, tex: Figure
) -> Cloth:
    """A square metre at a gauge, of a loop in cm and a yarn in tex.

    Where the loop was found by weight its causes hold those of the tex, and they cancel in grams.
    ValueError for a gauge that is not above zero.
    """
    per_m2 = 10_000 * stitches_per_cm2(stitches_per_10cm, rows_per_10cm)
    metres = metres_per_m2(stitches_per_10cm, rows_per_10cm, loop)
    grams = metres.times(tex.given_in("tex"), "g").scaled(1 / 1000)
    each = grams.scaled(1 / per_m2)
    steps = (
        Step(
            "Stitches in 1 m²",
            f"{stitches_per_10cm:g} × {rows_per_10cm:g} × 100",
            per_m2,
            "stitches",
        ),
        _found("Yarn in 1 m²", f"{per_m2:.0f} × {loop.value:.4g} cm ÷ 100", metres),
        _found("Weight of 1 m²", f"{metres.value:.1f} m × {tex.value:.1f} tex ÷ 1000", grams),
        _found(
            "Weight of one stitch",
            f"{grams.value:.1f} g ÷ {per_m2:.0f}",
            each.scaled(1000, "mg"),
        ),
    )
    return Cloth(metres, grams, loop, each, steps)


@dataclass(frozen=True, slots=True)
class Fullness:
    """How full of yarn a fabric is: √tex per cm of loop, by weight and (where wraps are known) by
    wraps, its band, and "loftier" or "denser" where the two differ."""

    by_weight: float
    by_wraps: float | None
    word: str
    loft: str
    steps: tuple[Step, ...]


def fullness(tex: float, loop: float, wraps_per_inch: float | None = None) -> Fullness:
    """The firmness of a fabric from tex, the yarn in a stitch in cm, and wraps if they were
    measured. ValueError for a number that is not above zero."""
    weight = firmness(tex, loop)
    word = firmness_word(weight)
    how = f"√({tex:.0f} tex) ÷ {loop:.3g} cm: {word}"
    steps = [Step("Firmness by weight", how, weight, "√tex/cm", source=BANDS, standing="practice")]
    if wraps_per_inch is None:
        return Fullness(weight, None, word, "", tuple(steps))
    wraps = firmness_by_wraps(wraps_per_inch, loop)
    loft = loft_word(weight, wraps)
    how = f"2.54 cm ÷ {wraps_per_inch:g} ÷ (0.00959 × {loop:.3g} cm)"
    how += f": the yarn is {loft} than usual" if loft else ""
    steps.append(
        Step("Firmness by wraps", how, wraps, "√tex/cm", source=BANDS, standing="practice")
    )
    return Fullness(weight, wraps, word, loft, tuple(steps))


def _found(what: str, how: str, figure: Figure) -> Step:
    return Step(what, how, figure.value, figure.unit, figure.u)
