"""What a swatch tells of the yarn in one stitch, and how several tellings are combined."""

from collections.abc import Mapping
from dataclasses import dataclass

from app.craft.domain import positive
from app.craft.figure import Figure, total

UNRAVELLED_SHARE = 0.015
"""Standard uncertainty of a thread measured under the tension of the reel (practice)."""


@dataclass(frozen=True, slots=True)
class Combined:
    """One figure from several, each way's weight (they sum to 1) and the way that weighs most."""

    figure: Figure
    weights: Mapping[str, float]

    @property
    def chief(self) -> str:
        """The way that dominated."""
        return max(self.weights, key=lambda way: self.weights[way])


def unravelled(thread_cm: float, stitches: float) -> Figure:
    """Yarn in one stitch, in cm, from the thread of so many unravelled stitches (the principle of
    EN 14970), measured at the tension the skeins were reeled at; u 1.5 %. ValueError for zero."""
    count = positive(stitches, "the number of stitches unravelled")
    loop = positive(thread_cm, "the length of the thread") / count
    return Figure(loop, "cm", {"thread of the unravelled stitches": loop * UNRAVELLED_SHARE})


def weighed(mass: Figure, tex: Figure, stitches: float) -> Figure:
    """Yarn in one stitch, in cm, from a swatch's mass in g: 10⁵·m/(T·n), with cast-on and cast-off
    counted as a row each. ValueError for no stitches or no linear density."""
    positive(tex.given_in("tex").value, "linear density in tex")
    count = positive(stitches, "the number of stitches in the swatch")
    return mass.given_in("g").scaled(1e5 / count).per(tex, "cm")


def grams_per_stitch(mass: Figure, stitches: float) -> Figure:
    """Grams in one stitch, for a budget kept in grams: linear density cancels."""
    count = positive(stitches, "the number of stitches in the swatch")
    return mass.given_in("g").scaled(1 / count)


def combine(ways: Mapping[str, Figure]) -> Combined:
    """The mean of several findings of one quantity, weighted by inverse variance (JCGM 100).

    A finding without uncertainty is taken alone. The ways are taken as independent of each other.
    ValueError for no way at all, UnitMismatch for unlike units.
    """
    if not ways:
        raise ValueError("there is nothing to combine")
    exact = [way for way, found in ways.items() if found.u == 0]
    raw = {exact[0]: 1.0} if exact else {way: 1 / found.u**2 for way, found in ways.items()}
    whole = sum(raw.values())
    weights = {way: weight / whole for way, weight in raw.items()}
    unit = next(iter(ways.values())).unit
    return Combined(total((ways[way].scaled(w) for way, w in weights.items()), unit), weights)
