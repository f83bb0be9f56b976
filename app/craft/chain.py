"""The whole way between fleece and finished yarn, either way round, with its working.

Backwards: so many metres of a yarn are wanted; what must be plied, spun, prepared and shorn?
Forwards: so many grams of wool are there; what do they become?
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from app.craft.domain import positive, share
from app.craft.figure import Figure
from app.craft.fleece import (
    WATER,
    Losses,
    plied_length,
    prepared_from,
    single_length,
    single_tex,
    wool_for,
    yarn_from,
)
from app.craft.working import Step

CHAIN_PLIES = 3
"""A chain ply lays one single three times beside itself."""


@dataclass(frozen=True, slots=True)
class Making:
    """How a yarn is made: finished linear density in tex, plies, share of length lost in finishing
    (`shrink`) and in plying (`take_up`), `chain_plied` from one bobbin; the losses of mass and the
    yield, scoured per skirted mass as a share."""

    tex: float
    plies: int
    losses: Losses
    yield_share: Figure
    shrink: float = 0.0
    take_up: float = 0.0
    chain_plied: bool = False

    def __post_init__(self) -> None:
        positive(self.tex, "linear density in tex")
        positive(self.plies, "the number of plies")
        if self.chain_plied and self.plies != CHAIN_PLIES:
            raise ValueError(f"a chain-plied yarn has three plies, not {self.plies}")


@dataclass(frozen=True, slots=True)
class Chain:
    """Metres finished, plied and of singles in all; the single's tex; grams at every stage."""

    finished_m: Figure
    plied_m: Figure
    single_m: Figure
    single_tex: Figure
    yarn_g: Figure
    spun_g: Figure
    stages: Mapping[str, Figure]
    steps: tuple[Step, ...] = ()


def backwards(finished_m: float, making: Making) -> Chain:
    """What so many metres of finished yarn want, stage by stage back to the raw fleece.

    `stages` holds grams of prepared fibre and of scoured, skirted and raw wool. ValueError for a
    length that is not above zero or a loss out of its domain.
    """
    yarn_g = Figure(positive(finished_m, "finished length in m") * making.tex / 1000, "g")
    stages = {
        name: wool_for(yarn_g, state, making.yield_share, making.losses)
        for name, state in STAGES.items()
    }
    return _chain(Figure(finished_m, "m"), yarn_g, making, stages)


def forwards(now_g: Figure, state: str, making: Making, water: Figure = WATER) -> Chain:
    """What so many grams of wool in that state become: `stages` holds grams of the wool now and of
    prepared fibre. ValueError for a state that is not known or a loss out of its domain."""
    prepared = prepared_from(now_g, state, making.yield_share, making.losses, water)
    yarn_g = yarn_from(now_g, state, making.yield_share, making.losses, water)
    finished = yarn_g.scaled(1000 / making.tex, "m")
    return _chain(finished, yarn_g, making, {state: now_g, "prepared": prepared})


STAGES = {"prepared": "carded", "scoured": "scoured", "skirted": "skirted", "raw": "raw"}
"""Stages on the way back, by the state of the wool that stands for each."""


def _chain(finished: Figure, yarn_g: Figure, making: Making, stages: Mapping[str, Figure]) -> Chain:
    spun = yarn_g.scaled(1 / (1 - share(making.losses.finish, "loss in finishing")))
    per_m = plied_length(1.0, making.shrink)
    plied = finished.scaled(per_m)
    each = plied.scaled(single_length(1.0, making.take_up))
    singles = each.scaled(making.plies)
    tex = Figure(single_tex(spun.value, making.plies, each.value), "tex")
    chain = Chain(finished, plied, singles, tex, yarn_g, spun, stages)
    return replace(chain, steps=_steps(chain, making))


def _steps(chain: Chain, making: Making) -> tuple[Step, ...]:
    finished, plied, singles = chain.finished_m, chain.plied_m, chain.single_m
    bobbins = "one bobbin, three times" if making.chain_plied else f"{making.plies} singles"
    steps = [
        _step("Finished yarn", f"{finished.value:.1f} m × {making.tex:.1f} tex", chain.yarn_g),
        _step(
            "Off the bobbins",
            f"{chain.yarn_g.value:.1f} g ÷ {_kept(making.losses.finish)}",
            chain.spun_g,
        ),
        _step("To ply", f"{finished.value:.1f} m ÷ {_kept(making.shrink)}", plied),
        _step("Singles", f"{plied.value:.1f} m ÷ {_kept(making.take_up)} × {bobbins}", singles),
        _step(
            "Each single", f"{chain.spun_g.value:.1f} g ÷ {singles.value:.1f} m", chain.single_tex
        ),
    ]
    for name, wool in chain.stages.items():
        kept = chain.yarn_g.value / wool.value
        how = f"{chain.yarn_g.value:.1f} g of yarn ÷ {kept:.4g} kept of it"
        steps.append(_step(f"Wool, {name}", how, wool))
    return tuple(steps)


def _kept(lost: float) -> str:
    return f"{1 - lost:.4g}"


def _step(what: str, how: str, figure: Figure) -> Step:
    return Step(what, how, figure.value, figure.unit, figure.u)
