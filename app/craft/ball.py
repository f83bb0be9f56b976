"""How far a ball on the needles reaches, from what it weighed on the way.

Work is measured in metres as planned: the yarn that the rows done would take at the gauge as it
was reckoned. What is left after x of them is

    M − q·x − q₀·∫₀ˣ d,

M the ball's weight, q the grams that really go into a planned metre (the hand and the grist of this
ball, one number for all of it, q₀ the expected one) and d the drift of the grist along the yarn: it
wanders about zero with a deviation cv and forgets itself over a length k (an Ornstein-Uhlenbeck
process). Deviations along a ball add up, so readings far apart tell more of q than readings close
together, and the rest of the ball, which nobody has knit, stays unsure. All of it is normal and
linear, so what the weighings tell follows in closed form for given cv and k. Those differ from
spinner to spinner: several pairs are held possible, each weighted by how well it explains what was
weighed.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import cached_property
from math import exp, log, pi, sqrt
from statistics import NormalDist

from app.craft.cholesky import forward, lower

_NORMAL = NormalDist()

LEVEL_U = 0.11
"""Standard uncertainty of q before anything was weighed: hand 10 %, garment 3 %, ball 3 %
(practice)."""

Drifts = tuple[tuple[float, float, float], ...]
"""Deviations of the grist, correlation lengths in m, and how likely the two are."""

DRIFTS: Drifts = tuple(
    (cv, k, cv_weight * k_weight)
    for cv, cv_weight in ((0.03, 0.28), (0.06, 0.4), (0.095, 0.32))
    for k, k_weight in ((5.0, 0.25), (20.0, 0.5), (50.0, 0.25))
)
"""Deviation of the grist, its correlation length in m, and how likely the two are before anything
was weighed: about 6 % and 20 m for handspun (practice)."""

SURELY = 1e-4


@dataclass(frozen=True, slots=True)
class Weighed:
    """A ball showed `g` grams after `x` planned metres, on a scale with steps of `step_g`."""

    x: float
    g: float
    step_g: float = 1.0

    @property
    def u(self) -> float:
        """Standard uncertainty in g: half a step either way, all alike (rectangular)."""
        return self.step_g / sqrt(12)


@dataclass(frozen=True, slots=True)
class _Told:
    """What one pair of cv and k makes of the weighings."""

    cv: float
    k: float
    weight: float
    factor: Sequence[Sequence[float]]
    solved: Sequence[float]


@dataclass(frozen=True)
class Ball:
    """A ball by its weighings in their order, the first before any of it was knit (x = 0).

    `expected` is q₀ in g per planned metre, `level_u` how unsure that is as a share of it;
    `drifts` are (cv, k in m, weight), of which the weights need not sum to one.
    """

    weighed: tuple[Weighed, ...]
    expected: float
    level_u: float = LEVEL_U
    drifts: Drifts = field(default=DRIFTS)

    def left(self, x: float) -> tuple[float, float]:
        """What is left after x planned metres, in g: its mean, below zero where it has ended
        before, and its standard uncertainty."""
        seen = [(one.weight, *self._left(one, x)) for one in self._told]
        mean = sum(weight * value for weight, value, _ in seen)
        spread = sum(weight * (u * u + (value - mean) ** 2) for weight, value, u in seen)
        return mean, sqrt(spread)

    def odds(self, x: float) -> float:
        """The odds, 0 to 1, that the ball reaches x planned metres."""
        odds = sum(one.weight * _above_zero(*self._left(one, x)) for one in self._told)
        return min(1.0, odds)  # the dust of weights that sum to one

    def reaches(self, share: float) -> float:
        """The planned metres the ball reaches with odds of `share` (0 to 1, both exclusive)."""
        low, high = self.weighed[-1].x, self.weighed[-1].x + 1.0
        while self.odds(high) > share and high < low + 1e6:
            high = low + 2 * (high - low)
        while high - low > SURELY * max(1.0, high):
            middle = (low + high) / 2
            low, high = (middle, high) if self.odds(middle) > share else (low, middle)
        return (low + high) / 2

    def surprise(self, new: Weighed) -> float:
        """How many standard deviations a new weighing lies from the expected one; above zero where
        the ball is heavier."""
        mean, u = self.left(new.x)
        return (new.g - mean) / sqrt(u * u + new.u * new.u)

    @cached_property
    def drift_weights(self) -> Drifts:
        """The drifts with their weights after the weighings: for the next ball of the yarn."""
        return tuple((one.cv, one.k, one.weight) for one in self._told)

    @cached_property
    def _told(self) -> tuple[_Told, ...]:
        found = [self._explained(*drift) for drift in self.drifts]
        best = max(log_weight for log_weight, _ in found)
        total = sum(exp(log_weight - best) for log_weight, _ in found)
        return tuple(
            _Told(one.cv, one.k, exp(log_weight - best) / total, one.factor, one.solved)
            for log_weight, one in found
        )

    def _explained(self, cv: float, k: float, weight: float) -> tuple[float, _Told]:
        xs = [one.x for one in self.weighed]
        spread = [[self._covariance(cv, k, a, b) for b in xs] for a in xs]
        for at, one in enumerate(self.weighed):
            spread[at][at] += one.u**2
        factor = lower(spread)
        off = [one.g - self._before(one.x) for one in self.weighed]
        solved = forward(factor, off)
        fit = -sum(one * one for one in solved) / 2 - sum(log(factor[i][i]) for i in range(len(xs)))
        fit -= len(xs) * log(2 * pi) / 2
        return log(weight) + fit, _Told(cv, k, weight, factor, solved)

    def _left(self, told: _Told, x: float) -> tuple[float, float]:
        shared = [self._covariance(told.cv, told.k, x, one.x) for one in self.weighed]
        seen = forward(told.factor, shared)
        mean = self._before(x) + sum(a * b for a, b in zip(seen, told.solved, strict=True))
        own = self._covariance(told.cv, told.k, x, x)
        return mean, sqrt(max(0.0, own - sum(one * one for one in seen)))

    def _before(self, x: float) -> float:
        return self.weighed[0].g - self.expected * x

    def _covariance(self, cv: float, k: float, a: float, b: float) -> float:
        """Of what is left after a and after b planned metres, in g². The ball's own weight is as
        good as unknown until it is weighed."""
        whole = (10 * self.weighed[0].u + self.weighed[0].g) ** 2
        level = self.level_u**2 * a * b
        return whole + self.expected**2 * (level + cv * cv * wandered(k, min(a, b), max(a, b)))


def wandered(k: float, a: float, b: float) -> float:
    """The covariance, for a deviation of 1, of what a wandering grist has added up to after a and
    after b ≥ a metres: k·(2a − k·(1 − e^(−a/k) + e^(−(b−a)/k) − e^(−b/k))), in m²."""
    return k * (2 * a - k * (1 - exp(-a / k) + exp(-(b - a) / k) - exp(-b / k)))


def _above_zero(mean: float, u: float) -> float:
    return _NORMAL.cdf(mean / u) if u > 0 else float(mean > 0)
