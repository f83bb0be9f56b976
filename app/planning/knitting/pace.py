"""How much yarn a garment on the needles really takes, against what was planned.

Each ball that was weighed twice tells it once: grams gone over grams expected for the rows between.
Its error is the scale's and the grist's, which wanders along the yarn (app.craft.ball). Together
they narrow what the gauge left open; one that is strange is set aside until it is let in.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from math import exp, hypot, log, sqrt

from app.craft.ball import Weighed, wandered
from app.craft.learning import Belief, Judged, Normal, Observed, take_in

GARMENT_U = 0.03
"""What one garment strays from its maker's hand, as a share (practice)."""

DRIFT_CV, DRIFT_M = 0.06, 20.0
"""Deviation of handspun's grist and the length over which it forgets itself (practice)."""

LEAST_G = 2.0
"""Less than this gone tells nothing yet."""

EFFECT = ("yarn taken", "garment", "")


@dataclass(frozen=True, slots=True)
class Gone:
    """What went from a ball between its first weighing and its last: grams, and the planned metres
    they knit, of `g_per_m` each. `key` is that of its observation."""

    key: str
    grams: float
    metres: float
    g_per_m: float
    scale_g: float

    @property
    def observed(self) -> Observed:
        """The logarithm of what was taken as a multiple of what was planned."""
        expected = self.metres * self.g_per_m
        strays = DRIFT_CV * sqrt(wandered(DRIFT_M, self.metres, self.metres)) / self.metres
        scale = self.scale_g * sqrt(2) / self.grams
        return Observed(self.key, (EFFECT,), log(self.grams / expected), hypot(scale, strays))


@dataclass(frozen=True, slots=True)
class Pace:
    """Yarn taken as a multiple of yarn planned: its mean and standard uncertainty; `judged` are the
    balls it was learned from."""

    value: float
    u: float
    judged: tuple[Judged, ...] = ()


def gone(key: str, weighed: tuple[Weighed, ...], g_per_m: float) -> Gone | None:
    """What a ball has told so far; None where too little went of it."""
    first, last = weighed[0], weighed[-1]
    grams, metres = first.g - last.g, last.x - first.x
    if grams < LEAST_G or metres <= 0:
        return None
    return Gone(key, grams, metres, g_per_m, hypot(first.u, last.u) / sqrt(2))


def pace(planned_u: float, told: tuple[Gone, ...], verdicts: Mapping[str, str]) -> Pace:
    """What balls tell together, where the plan was unsure by `planned_u` as a share."""
    before = Normal(0.0, hypot(planned_u, GARMENT_U))
    belief = Belief(lambda _: before)
    judged = take_in(belief, (one.observed for one in told), verdicts)
    after = belief.expected([EFFECT])
    return Pace(exp(after.mean), exp(after.mean) * after.sd, judged)
