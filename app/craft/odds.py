"""The odds that margins which share errors are all above zero, and what must be added to them.

A margin is supply less need. To first order margins are jointly normal (GUM, JCGM 100:2008), their
covariances following from the causes they share. One margin needs only the normal distribution;
several are integrated by A. Genz, "Numerical Computation of Multivariate Normal Probabilities"
(1992): Cholesky, one coordinate at a time, over a shifted lattice. The lattice is fixed, so the
same margins always give the same odds.
"""

from collections.abc import Sequence
from math import ceil, exp, floor, pi, sqrt
from statistics import NormalDist

from app.craft.cholesky import lower
from app.craft.figure import Figure

_NORMAL = NormalDist()
_POINTS = 64
_SHIFTS = 8
_TINY = 1e-12


def normal_quantile(share: float) -> float:
    """How many standard uncertainties leave `share` (0 to 1, both exclusive) below."""
    return _NORMAL.inv_cdf(share)


def joint_odds(margins: Sequence[Figure]) -> tuple[float, float]:
    """The odds that every margin is at least zero, and the half-width of that number (95 %)."""
    spread = [[one.covariance(other) for other in margins] for one in margins]
    return _orthant([one.value for one in margins], spread)


def raise_to(margins: Sequence[Figure], wanted: float) -> list[float]:
    """What to add to each margin so that all are at least zero with odds of `wanted` (0 to 1).

    Every margin is raised to the same number of its own uncertainties; those above it already keep
    what they have. The amounts are taken as exact.
    """
    spread = [[one.covariance(other) for other in margins] for one in margins]

    def level(z: float) -> list[float]:
        return [max(one.value, z * one.u) for one in margins]

    if _orthant([one.value for one in margins], spread)[0] >= wanted:
        return [0.0 for _ in margins]
    low, high = -8.0, 8.0
    for _ in range(26):
        middle = (low + high) / 2
        enough = _orthant(level(middle), spread)[0] >= wanted
        low, high = (low, middle) if enough else (middle, high)
    return [new - one.value for new, one in zip(level(high), margins, strict=True)]


def expected_above_zero(margin: Figure) -> float:
    """The mean of what is left of a normal margin cut at zero, in its unit."""
    if margin.u < _TINY:
        return max(0.0, margin.value)
    z = margin.value / margin.u
    return max(0.0, margin.value * _NORMAL.cdf(z) + margin.u * _density(z))


def spill_over(margin: Figure) -> tuple[float, float]:
    """Mean and standard deviation of what is missing beyond a margin that is expected to suffice.

    In the margin's unit. A margin below zero counts as zero: what is known to be missing is spun
    or bought, not taken from the next plan.
    """
    if margin.u < _TINY:
        return 0.0, 0.0
    z = max(0.0, margin.value / margin.u)
    tail = _NORMAL.cdf(-z)
    mean = _density(z) - z * tail
    square = (1 + z * z) * tail - z * _density(z)
    return margin.u * mean, margin.u * sqrt(max(0.0, square - mean * mean))


def times_in_twenty(odds: float) -> int:
    """The odds as a whole number of times in 20, never promising 20 or 0 that is not so sure."""
    if odds >= 0.995:
        return 20
    if odds <= 0.005:
        return 0
    return min(19, max(1, floor(odds * 20 + 0.5)))


def whole_up(amount: float, tolerance: float = 1e-6) -> int:
    """`amount` rounded up, forgiving the dust of floating point."""
    return ceil(amount - tolerance)


def _density(z: float) -> float:
    return exp(-z * z / 2) / sqrt(2 * pi)


def _orthant(means: Sequence[float], spread: Sequence[Sequence[float]]) -> tuple[float, float]:
    live = [i for i in range(len(means)) if spread[i][i] > _TINY]
    if any(means[i] < -1e-9 for i in range(len(means)) if i not in live):
        return 0.0, 0.0
    if not live:
        return 1.0, 0.0
    scaled = [means[i] / sqrt(spread[i][i]) for i in live]
    if len(live) == 1:
        return _NORMAL.cdf(scaled[0]), 0.0
    correlation = [[spread[i][j] / sqrt(spread[i][i] * spread[j][j]) for j in live] for i in live]
    order = sorted(range(len(live)), key=lambda i: round(scaled[i], 9))  # dust decides no tie
    root = lower([[correlation[i][j] for j in order] for i in order])
    return _lattice([scaled[i] for i in order], root)


def _lattice(means: Sequence[float], root: Sequence[Sequence[float]]) -> tuple[float, float]:
    steps = [sqrt(prime) % 1 for prime in _PRIMES[: len(means) - 1]]
    found = []
    for shift in range(_SHIFTS):
        starts = [(shift + 0.5) * (step * 7 % 1) % 1 for step in steps]
        values = 0.0
        for point in range(1, _POINTS + 1):
            place = (
                abs(2 * ((point * step + start) % 1) - 1)
                for step, start in zip(steps, starts, strict=True)
            )
            values += _one_by_one(means, root, list(place))
        found.append(values / _POINTS)
    mean = sum(found) / _SHIFTS
    error = sqrt(sum((one - mean) ** 2 for one in found) / (_SHIFTS * (_SHIFTS - 1)))
    return mean, 2.36 * error


def _one_by_one(
    means: Sequence[float], root: Sequence[Sequence[float]], place: Sequence[float]
) -> float:
    drawn: list[float] = []
    odds = 1.0
    for i, mean in enumerate(means):
        known = mean + sum(root[i][k] * drawn[k] for k in range(i))
        rest = root[i][i]
        if rest <= 1e-7:
            if known < 0:
                return 0.0
            drawn.append(0.0)
            continue
        above = _NORMAL.cdf(known / rest)
        odds *= above
        if i < len(place):
            below = 1 - above + place[i] * above
            drawn.append(_NORMAL.inv_cdf(min(max(below, 1e-15), 1 - 1e-15)))
    return odds


_PRIMES = (2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43, 47, 53, 59, 61, 67, 71)
