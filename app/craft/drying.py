"""Wool as it dries: when it is dry, and before that what it will probably weigh.

Spread out to air, wool loses about the same share of its remaining water in each hour:
m(t) = D + W·exp(−k·t). How dry wool weighs (D) is weighed over a grid of D and k: each pair counts
by how near it comes to the weighings and by what was expected of D beforehand (Bayes' rule).
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import exp, log, sqrt

from app.craft.domain import positive
from app.craft.figure import Figure
from app.craft.moisture import is_dry

LEAST_HOURS = 1.0
"""Two weighings tell of drying when an hour or more lies between them (practice)."""

SCALE_SHARE = 0.003
"""Standard uncertainty of a weighing of airing wool, as a share of it: scale, drips (assumed)."""

SHAPE_SHARE = 0.05
"""How far drying strays from the formula, as a share of the water left (assumed)."""

HALVING_HOURS = (1.0, 72.0)
"""Hours in which half of the water goes: in a warm wind, and in a cold shed (assumed)."""

RATES, MASSES = 16, 64
"""The fineness of the grid."""

LEAST_SHARE = 0.25
"""Of drying wool no more than three quarters are taken to be water (assumed)."""

CAUSE = "how far it has dried"


@dataclass(frozen=True, slots=True)
class Damp:
    """Grams of drying wool, so many hours after the first weighing."""

    hours: float
    g: float


def agreed(weighings: Sequence[Damp]) -> bool:
    """True where the last weighing agrees with the last one an hour or more before it."""
    if not weighings:
        return False
    last = weighings[-1]
    earlier = [one for one in weighings if last.hours - one.hours >= LEAST_HOURS]
    return bool(earlier) and is_dry(earlier[-1].g, last.g)


def steady(weighings: Sequence[Damp]) -> bool:
    """True where no two successive weighings grow: wool that dries only loses."""
    return all(two.g <= one.g * (1 + SCALE_SHARE * 2) for one, two in pairwise(weighings))


def dry_weight(weighings: Sequence[Damp], expected: Figure) -> Figure:
    """Grams the wool will weigh when dry, from weighings in their order and what was `expected` of
    it before (g, with its uncertainty). It cannot weigh more than it does now.

    ValueError without a weighing, or for a mass that is not above zero.
    """
    if not weighings:
        raise ValueError("without a weighing nothing is known of drying wool")
    last = positive(weighings[-1].g, "mass in g")
    least, most = LEAST_SHARE * last, last * (1 + 2 * SCALE_SHARE)
    step = (most - least) / MASSES
    found = [
        (dry, sum(_likely(weighings, dry, rate) for rate in _rates()) * _before(dry, expected))
        for dry in (least + (place + 0.5) * step for place in range(MASSES))
    ]
    whole = sum(weight for _, weight in found)
    if whole <= 0:
        # It is far lighter than was expected: the weighing stands, and the wool is nearly dry.
        return Figure(last, "g", {CAUSE: last * SHAPE_SHARE})
    mean = sum(dry * weight for dry, weight in found) / whole
    spread = sqrt(sum(weight * (dry - mean) ** 2 for dry, weight in found) / whole)
    return Figure(mean, "g", {CAUSE: max(spread, step / 2)})


def _rates() -> Iterator[float]:
    """Shares of the water lost in an hour, evenly spread in their logarithm."""
    fast, slow = (log(2) / hours for hours in HALVING_HOURS)
    for place in range(RATES):
        yield slow * (fast / slow) ** (place / (RATES - 1))


def _before(dry: float, expected: Figure) -> float:
    wide = max(expected.given_in("g").u, SCALE_SHARE * expected.value)
    return exp(-0.5 * ((dry - expected.value) / wide) ** 2)


def _likely(weighings: Sequence[Damp], dry: float, rate: float) -> float:
    """How well a dry mass and a rate explain the weighings, with the water that fits best."""
    left = [exp(-rate * one.hours) for one in weighings]
    off = [_stray(one.g, dry) for one in weighings]
    squares = sum((share / u) ** 2 for share, u in zip(left, off, strict=True))
    water = (
        sum(
            (one.g - dry) * share / u**2 for one, share, u in zip(weighings, left, off, strict=True)
        )
        / squares
    )
    water = max(water, 0.0)
    chi2 = sum(
        ((one.g - dry - water * share) / u) ** 2
        for one, share, u in zip(weighings, left, off, strict=True)
    )
    scale = 1.0
    for u in off:
        scale *= u / weighings[0].g
    return exp(-0.5 * chi2) / scale


def _stray(g: float, dry: float) -> float:
    return sqrt((SCALE_SHARE * g) ** 2 + (SHAPE_SHARE * max(0.0, g - dry)) ** 2)
