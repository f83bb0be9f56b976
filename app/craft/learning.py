"""Learning from what was measured: one linear Gaussian model in logs, in closed form.

What is learned is a factor, such as the share of wool that a step keeps or the metres of an hour.
Its logarithm is a sum of effects: the maker's, that of a breed or a preparation, that of a fleece.
Each effect is normal before anything is seen; every observation is such a sum with an error of its
own. Conditioning a normal on a linear observation leaves a normal, so nothing is approximated, and
the order of the observations matters only to which of them is found strange.
"""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from math import exp, sqrt
from typing import Literal

from app.craft.odds import normal_quantile

Effect = tuple[str, ...]
"""What bears on a factor: its name, the level and whose, such as ("scour", "breed", "Cheviot")."""

Standing = Literal["counts", "let in", "set aside", "struck out"]

FAR = 3.5
"""An observation so many predictive standard deviations off is set aside until it is let in."""


SUPPOSED = 8
"""So many observations the supposed spreads are worth (practice)."""


@dataclass(frozen=True, slots=True)
class Normal:
    """A normal distribution by its mean and standard deviation."""

    mean: float
    sd: float

    def range(self, share: float = 0.9) -> tuple[float, float]:
        """Where it lies with the odds of `share`, as low and high."""
        reach = normal_quantile((1 + share) / 2) * self.sd
        return self.mean - reach, self.mean + reach

    def factor_range(self, share: float = 0.9) -> tuple[float, float]:
        """The same of the factor whose logarithm it is."""
        low, high = self.range(share)
        return exp(low), exp(high)


@dataclass(frozen=True, slots=True)
class Observed:
    """A logarithm that was seen: the sum of `effects` with an error of `sd` of its own."""

    key: str
    effects: tuple[Effect, ...]
    value: float
    sd: float


@dataclass(frozen=True, slots=True)
class Judged:
    """An observation, how many predictive standard deviations off it was, and what became of it."""

    observed: Observed
    off: float
    standing: Standing


class Belief:
    """What is thought of every effect, starting from its prior."""

    def __init__(self, prior: Callable[[Effect], Normal]) -> None:
        self._prior = prior
        self._at: dict[Effect, int] = {}
        self._mean: list[float] = []
        self._spread: list[list[float]] = []

    def expected(self, effects: Iterable[Effect], sd: float = 0.0) -> Normal:
        """The sum of effects, each named once, with an error of `sd` if it is to be seen next."""
        effects = tuple(effects)
        places = [self._at[one] for one in effects if one in self._at]
        unseen = [self._prior(one) for one in effects if one not in self._at]
        variance = sum(self._spread[i][j] for i in places for j in places) + sd * sd
        mean = sum(self._mean[i] for i in places) + sum(one.mean for one in unseen)
        return Normal(mean, sqrt(max(0.0, variance) + sum(one.sd**2 for one in unseen)))

    def see(self, one: Observed) -> None:
        """Take in an observation. ValueError for an error that is not above zero."""
        if not one.sd > 0:
            raise ValueError(f"an observation has an error above zero, not {one.sd:g}")
        places = [self._place(effect) for effect in one.effects]
        shared = [sum(row[j] for j in places) for row in self._spread]
        variance = sum(shared[i] for i in places) + one.sd**2
        off = one.value - sum(self._mean[i] for i in places)
        touched = [i for i, part in enumerate(shared) if part]
        for i in touched:
            self._mean[i] += shared[i] * off / variance
            row, part = self._spread[i], shared[i] / variance
            for j in touched:
                row[j] -= part * shared[j]

    def _place(self, effect: Effect) -> int:
        if effect not in self._at:
            prior = self._prior(effect)
            self._at[effect] = len(self._mean)
            self._mean.append(prior.mean)
            for row in self._spread:
                row.append(0.0)
            self._spread.append([0.0] * len(self._mean))
            self._spread[-1][-1] = prior.sd**2
        return self._at[effect]


def take_in(
    belief: Belief, observations: Iterable[Observed], verdicts: Mapping[str, str]
) -> tuple[Judged, ...]:
    """Let a belief see observations in their order, and say what became of each.

    `verdicts` are the maker's own by key: "struck out" leaves one out, "let in" takes in one that
    is strange. A strange one nobody has let in changes nothing.
    """
    judged = []
    for one in observations:
        expected = belief.expected(one.effects, one.sd)
        off = (one.value - expected.mean) / expected.sd
        standing = _standing(off, verdicts.get(one.key, ""))
        if standing in ("counts", "let in"):
            belief.see(one)
        judged.append(Judged(one, off, standing))
    return tuple(judged)


def evenness(judged: Iterable[Judged]) -> float:
    """How far what counts really strayed, as a multiple of what was supposed: 1 before anything was
    seen. If all spreads are wrong by one unknown factor, its square is scaled inverse chi-squared
    before and after (Gelman and others, *Bayesian Data Analysis*); common practice weighs as much
    as `SUPPOSED` observations."""
    squares = [one.off**2 for one in judged if one.standing in ("counts", "let in")]
    return sqrt((SUPPOSED + sum(squares)) / (SUPPOSED + len(squares)))


def _standing(off: float, verdict: str) -> Standing:
    if verdict == "struck out":
        return "struck out"
    if abs(off) <= FAR:
        return "counts"
    return "let in" if verdict == "let in" else "set aside"
