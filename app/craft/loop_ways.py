"""Four ways to know the yarn in one stitch, and what those at hand say together.

Unravel stitches of a swatch and measure the thread; weigh the swatch; reckon from its gauge; or,
before any swatch, from needle and yarn. Ways at hand are weighted by their variances.
"""

from dataclasses import dataclass
from itertools import combinations
from math import hypot

from app.craft.fabric import KS_DRY, KS_WET, loop_cm
from app.craft.figure import Figure
from app.craft.needles import HAND_SHARE, predict_gauge
from app.craft.reel import scale_mass
from app.craft.swatch import Combined, combine, unravelled, weighed
from app.craft.working import Standing, Step

APART = 2.0
"""Two ways further apart than so many of their combined uncertainties are said to disagree."""


@dataclass(frozen=True, slots=True)
class Way:
    """One finding: its name, the yarn in a stitch in cm, and how it was found."""

    name: str
    loop: Figure
    how: str
    source: str
    standing: Standing


def by_thread(cm: float, stitches: float) -> Way:
    """From the thread in cm of so many unravelled stitches; u 1.5 %. ValueError as `unravelled`."""
    how = f"{cm:g} cm ÷ {stitches:g} stitches"
    return Way("thread", unravelled(cm, stitches), how, "principle of EN 14970", "measured")


def by_weight(g: float, stitches: float, tex: Figure, division_g: float = 1.0) -> Way:
    """From a swatch's weight in g on a scale that shows steps of `division_g`, cast-on and cast-off
    counted as a row each; u from the scale and the yarn. ValueError as `weighed`."""
    loop = weighed(scale_mass(g, division_g), tex, stitches)
    how = f"100,000 × {g:g} g ÷ ({tex.value:.0f} tex × {stitches:g} stitches)"
    return Way("weight", loop, how, "mass = length × linear density", "measured")


def by_gauge(stitches_per_10cm: float, rows_per_10cm: float, washed: bool = True) -> Way:
    """From the gauge alone; u 7 %. ValueError as `loop_cm`."""
    loop = loop_cm(stitches_per_10cm, rows_per_10cm, washed)
    area = KS_WET if washed else KS_DRY
    how = f"√({area:g} ÷ ({stitches_per_10cm:g} × {rows_per_10cm:g} ÷ 100))"
    return Way("gauge", loop, how, "Munden 1959", "published")


def by_needle(
    needle_mm: float, wraps_per_inch: float, hand: float = 1.0, hand_share: float = HAND_SHARE
) -> Way:
    """From needle and yarn before any swatch; u 10 % until the hand is learnt. ValueError as
    `predict_gauge`."""
    loop = predict_gauge(needle_mm, wraps_per_inch, hand, hand_share=hand_share).loop
    how = f"{hand:g} × π × ({needle_mm:g} mm + 25.4 mm ÷ {wraps_per_inch:g}) ÷ 10"
    return Way("needle", loop, how, "a loop lies around needle and yarn", "practice")


@dataclass(frozen=True, slots=True)
class LoopFound:
    """The yarn in one stitch in cm from all ways at hand, which of them dominated, and the ways
    that disagree by more than their errors, in pairs."""

    loop: Figure
    combined: Combined
    disagree: tuple[tuple[str, str], ...]
    steps: tuple[Step, ...]

    @property
    def chief(self) -> str:
        """The way that dominated: thread, weight, gauge or needle."""
        return self.combined.chief


def loop_from(*ways: Way) -> LoopFound:
    """The ways at hand combined by inverse variance, with their working.

    Each kind of way once; they are taken as independent. ValueError for no way at all.
    """
    both = combine({way.name: way.loop for way in ways})
    steps = [_step(way) for way in ways]
    if len(ways) > 1:
        steps.append(_sum(ways, both))
    apart = tuple((a.name, b.name) for a, b in combinations(ways, 2) if _disagree(a.loop, b.loop))
    return LoopFound(both.figure, both, apart, tuple(steps))


def _step(way: Way) -> Step:
    what = f"Yarn in one stitch, by {way.name}"
    return Step(what, way.how, way.loop.value, "cm", way.loop.u, way.source, way.standing)


def _sum(ways: tuple[Way, ...], both: Combined) -> Step:
    parts = [f"{both.weights.get(way.name, 0):.2f} × {way.loop.value:.3f}" for way in ways]
    how = f"{' + '.join(parts)}; most by {both.chief}"
    source = "weighted by inverse variance, JCGM 100:2008"
    return Step("Yarn in one stitch", how, both.figure.value, "cm", both.figure.u, source)


def _disagree(one: Figure, other: Figure) -> bool:
    return abs(one.value - other.value) > APART * hypot(one.u, other.u)
