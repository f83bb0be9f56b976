"""The factors that are learned, each with what is thought of it before anything was measured.

A factor is what was measured as a multiple of what is usual: of common practice, of the yield
printed of a breed, of the grist meant. So every effect is centred on 1, on 0 in logs, and only its
spread is stated here: how far makers, breeds, fleeces and single batches differ (practice).
"""

from collections.abc import Mapping
from dataclasses import dataclass
from math import log, sqrt
from types import MappingProxyType

from app.craft.breeds import typical_yield
from app.craft.fleece import LOSS_U
from app.craft.learning import Effect, Normal

Spreads = Mapping[str, float]

MAKER = "maker"
SHARES: Spreads = MappingProxyType({MAKER: 0.5, "fleece": 0.25, "batch": 0.25})
SHARES_PREPARED: Spreads = MappingProxyType(
    {MAKER: 0.4, "preparation": 0.15, "fleece": 0.2, "batch": 0.25}
)
"""How the variance of a loss is shared among its levels (practice)."""

SCOUR = {MAKER: 0.03, "fleece": 0.045, "batch": 0.02}
LEAST_BREED = 0.01
"""Of the yield, relative to what is printed of the breed; the breed has the rest of the width of
print, and at least this (practice)."""


@dataclass(frozen=True, slots=True)
class Factor:
    """A factor by its `name`; `words` for a page; the standard deviations of its levels in logs,
    and of a single `batch` of it."""

    name: str
    words: str
    spreads: Spreads
    batch: float

    @property
    def levels(self) -> tuple[str, ...]:
        """The levels an effect of this factor can have."""
        return tuple(self.spreads)

    def effects(self, **names: str) -> tuple[Effect, ...]:
        """The effects that bear on a case; what is not known of it has the empty name."""
        return tuple((self.name, level, names.get(level, "")) for level in self.levels)


def _of_loss(name: str, words: str, lost: float, u: float, shares: Spreads) -> Factor:
    """A share of mass that is kept: its whole spread is that which the reckoning states."""
    whole = u / (1 - lost)
    spreads = {one: whole * sqrt(part) for one, part in shares.items() if one != "batch"}
    return Factor(name, words, spreads, whole * sqrt(shares["batch"]))


STATED_SPREAD = log(1.02 / 0.68) / (2 * 1.6448536)
"""Of what garments take of a stated amount: 68 to 102 % of it, 9 times in 10 (practice)."""

GARMENT = 0.03
"""What one garment strays from its maker's hand (practice)."""

OF_GARMENTS = (
    Factor("took by gauge", "Yarn taken, against planned by a gauge", {MAKER: 0.10}, GARMENT),
    Factor("took by swatch", "Yarn taken, against planned by a swatch", {MAKER: 0.04}, GARMENT),
    Factor(
        "took of stated",
        "Yarn taken of a stated amount",
        {MAKER: 0.06, "source": sqrt(STATED_SPREAD**2 - 0.06**2 - 0.06**2)},
        0.06,
    ),
    Factor("took at place", "Yarn of a part beside the rest", {"place": 0.03}, 0.03),
    Factor("took in pattern", "Yarn of a stitch pattern beside the rest", {"pattern": 0.05}, 0.03),
)
"""A hand, its drift from swatch to garment, how far stated amounts run high (practice)."""


def _all() -> dict[str, Factor]:
    found = (
        _of_loss("skirt", "Kept in skirting", 0.15, LOSS_U["skirt"], SHARES),
        Factor(
            "scour",
            "Yield, scoured from skirted",
            {MAKER: SCOUR[MAKER], "breed": LEAST_BREED, "fleece": SCOUR["fleece"]},
            SCOUR["batch"],
        ),
        _of_loss("card", "Kept in carding", 0.07, LOSS_U["prepare"], SHARES),
        _of_loss("comb", "Kept in combing", 0.25, LOSS_U["prepare"], SHARES),
        _of_loss("spin", "Kept in spinning", 0.03, LOSS_U["spin"], SHARES_PREPARED),
        _of_loss("finish", "Weight kept in finishing", 0.02, LOSS_U["finish"], SHARES_PREPARED),
        Factor("shrink", "Length kept in finishing", {MAKER: 0.06, "yarn": 0.06}, 0.03),
        Factor("grist", "Grist of a yarn against the one meant", {MAKER: 0.08, "yarn": 0.08}, 0.05),
        *OF_GARMENTS,
    )
    return {one.name: one for one in found}


FACTORS: Mapping[str, Factor] = MappingProxyType(_all())

PACE = {MAKER: 0.4, "yarn": 0.2}
PACE_BATCH = 0.25
"""Of an hour's work, from maker to maker, from yarn to yarn and from evening to evening."""

PACE_NAME = "pace of "


def factor_of(name: str) -> Factor:
    """A factor by its name; KeyError for one that does not exist."""
    if name.startswith(PACE_NAME):
        work = name.removeprefix(PACE_NAME)
        return Factor(name, f"Pace: {work}", PACE, PACE_BATCH)
    return FACTORS[name]


def prior(effect: Effect) -> Normal:
    """What is thought of an effect before anything was measured."""
    name, level, whose = effect
    if (name, level) == ("scour", "breed"):
        return Normal(0.0, _breed_spread(whose))
    return Normal(0.0, factor_of(name).spreads[level])


def _breed_spread(breed: str) -> float:
    typical = typical_yield(breed).figure
    rest = (typical.u / typical.value) ** 2 - sum(one**2 for one in SCOUR.values())
    return sqrt(max(rest, LEAST_BREED**2))
