"""The odds that twelve parts all have enough, of skeins that share a scale and a hand."""

from collections.abc import Iterator
from math import prod
from pathlib import Path

from app.craft.figure import Figure, total
from app.craft.odds import joint_odds
from tests.bench.row import Row, interleaved

PARTS = 12
SKEINS_OF_A_PART = 5
SKEIN_M = 200.0
SPARE_SHARE = 0.08
SCALE_SHARE, HAND_SHARE, GRIST_SHARE, OWN_SHARE = 0.01, 0.05, 0.04, 0.03


def rows(_: Path, rounds: int) -> Iterator[Row]:
    """Milliseconds to integrate them together, and how unsure that leaves the odds."""
    margins = [_margin(part) for part in range(PARTS)]
    (took,) = interleaved(rounds, 3, lambda: joint_odds(margins))
    odds, half_width = joint_odds(margins)
    apart = prod(joint_odds([one])[0] for one in margins)
    note = f"{odds:.3f} of all, give or take {half_width:.4f}; {apart:.3f} if each were for itself"
    yield Row("odds of 12 parts of 60 skeins", took, "ms", 50, note=note)
    yield Row("half-width of those odds", 100 * half_width, "%", 1, note="10,000 draws leave 1 %")


def _margin(part: int) -> Figure:
    supply = total((_skein(part * SKEINS_OF_A_PART + at) for at in range(SKEINS_OF_A_PART)), "m")
    needed = supply.value * (1 - SPARE_SHARE)
    causes = {"hand": needed * HAND_SHARE, f"part {part}": needed * OWN_SHARE}
    return supply - Figure(needed, "m", causes)


def _skein(number: int) -> Figure:
    causes = {"scale": SKEIN_M * SCALE_SHARE, f"grist of {number}": SKEIN_M * GRIST_SHARE}
    return Figure(SKEIN_M, "m", causes)
