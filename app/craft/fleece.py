"""From fleece to yarn and back: what is kept of the mass at each step, and the lengths to spin.

Mass is conserved at every step except for what is named as lost; length is what changes.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Literal

from app.craft.domain import positive, share
from app.craft.figure import Figure

Making = Literal["skirt", "scour", "dry", "prepare", "spin", "finish"]
"""A step that takes something away from the mass."""

STEPS: dict[str, tuple[Making, ...]] = {
    "raw": ("skirt", "scour", "prepare", "spin", "finish"),
    "skirted": ("scour", "prepare", "spin", "finish"),
    "drying": ("dry", "prepare", "spin", "finish"),
    "scoured": ("prepare", "spin", "finish"),
    "carded": ("spin", "finish"),
    "combed": ("spin", "finish"),
    "part spun": ("spin", "finish"),
}
"""What still lies between a state of the wool and finished yarn."""

PREPARED: frozenset[Making] = frozenset({"skirt", "scour", "dry", "prepare"})
"""The steps that end in fibre ready to spin."""

CLEANING: frozenset[Making] = frozenset({"skirt", "scour", "dry"})
"""The steps that end in wool that is clean and dry."""

WATER = Figure(0.25, "share", {"water in the drying wool": 0.15})
"""Share of a drying fleece's mass that is water (assumed)."""


LOSS_U: dict[Making, float] = {"skirt": 0.05, "prepare": 0.04, "spin": 0.015, "finish": 0.015}
"""Standard uncertainty of a loss that one fleece's own weighings did not give (practice)."""


@dataclass(frozen=True, slots=True)
class Losses:
    """Share of the mass lost at a step, 0 to below 1: `skirt` raw to skirted, `prepare` scoured to
    carded or combed, `spin` prepared to bobbin, `finish` spun to finished yarn; `u` is how unsure
    each of them is."""

    skirt: float
    prepare: float
    spin: float
    finish: float
    u: Mapping[Making, float] = field(default_factory=LOSS_U.copy)


CAUSES: dict[Making, str] = {
    "skirt": "loss in skirting",
    "prepare": "waste in carding or combing",
    "spin": "waste in spinning",
    "finish": "loss in finishing",
}


def steps_from(state: str) -> tuple[Making, ...]:
    """The steps still to do from a state of the wool; ValueError for a state that is not known."""
    if state not in STEPS:
        raise ValueError(f"no state of wool is called {state!r}")
    return STEPS[state]


def share_kept(
    state: str,
    yield_share: Figure,
    losses: Losses,
    water: Figure = WATER,
    until_prepared: bool = False,
) -> Figure:
    """Share of the mass in that state that ends as finished yarn, or as fibre ready to spin.

    `yield_share` is scoured per skirted mass, a share above 0 and up to 1. ValueError for a share
    out of its domain or a state that is not known.
    """
    steps: Sequence[Making] = steps_from(state)
    if until_prepared:
        steps = [step for step in steps if step in PREPARED]
    return _kept_by_all(steps, yield_share, losses, water)


def share_scoured(state: str, yield_share: Figure, losses: Losses, water: Figure = WATER) -> Figure:
    """Share of the mass in that state that is left once it is clean and dry; errors as above."""
    steps = [step for step in steps_from(state) if step in CLEANING]
    return _kept_by_all(steps, yield_share, losses, water)


def yarn_from(
    now_g: Figure, state: str, yield_share: Figure, losses: Losses, water: Figure = WATER
) -> Figure:
    """Grams of finished yarn that wool in that state becomes."""
    return now_g.given_in("g").times(share_kept(state, yield_share, losses, water), "g")


def prepared_from(
    now_g: Figure, state: str, yield_share: Figure, losses: Losses, water: Figure = WATER
) -> Figure:
    """Grams of fibre ready to spin that wool in that state becomes."""
    kept = share_kept(state, yield_share, losses, water, until_prepared=True)
    return now_g.given_in("g").times(kept, "g")


def wool_for(
    yarn_g: Figure, state: str, yield_share: Figure, losses: Losses, water: Figure = WATER
) -> Figure:
    """Grams of wool in that state needed for so many grams of finished yarn: the inverse of
    `yarn_from`. "carded" or "combed" asks for fibre ready to spin, "raw" for fleece as shorn."""
    return yarn_g.given_in("g").per(share_kept(state, yield_share, losses, water), "g")


def yarn_mass(length_m: float, tex: float) -> float:
    """Mass in g of so many metres of a yarn, both above zero."""
    return positive(length_m, "length in m") * positive(tex, "linear density in tex") / 1000


def plied_length(finished_m: float, shrink: float) -> float:
    """Metres to ply for so many finished: L/(1−s), `shrink` the share lost in finishing."""
    return positive(finished_m, "finished length in m") / (1 - share(shrink, "shrinkage"))


def single_length(plied_m: float, take_up: float, chain_plied: bool = False) -> float:
    """Metres of each single for so many plied: L/(1−t); chain-plied, three times it from one."""
    each = positive(plied_m, "plied length in m") / (1 - share(take_up, "take-up"))
    return 3 * each if chain_plied else each


def single_tex(spun_g: float, plies: int, single_m: float) -> float:
    """Linear density in tex of a single, from the mass off the bobbins and the metres of each."""
    each = positive(spun_g, "mass in g") / positive(plies, "the number of plies")
    return 1000 * each / positive(single_m, "length of a single in m")


def _kept_by_all(
    steps: Sequence[Making], yield_share: Figure, losses: Losses, water: Figure
) -> Figure:
    kept = Figure(1.0, "share")
    for step in steps:
        kept = kept.times(_kept_by(step, yield_share, losses, water), "share")
    return kept


def _kept_by(step: Making, yield_share: Figure, losses: Losses, water: Figure) -> Figure:
    whole = Figure(1.0, "share")
    if step == "scour":
        if not 0 < yield_share.given_in("share").value <= 1:
            raise ValueError(
                f"a yield must lie above 0 % and up to 100 %, not {yield_share.value:%}"
            )
        return yield_share
    if step == "dry":
        share(water.given_in("share").value, "the share of water")
        return whole - water
    lost = share(getattr(losses, step), CAUSES[step])
    return Figure(1 - lost, "share", {CAUSES[step]: -losses.u[step]})
