"""What the shelf has of a yarn for some parts of a garment, and what of it may be knit for sure."""

from dataclasses import dataclass
from math import hypot

from app.book.book import Book
from app.book.plan import Plan
from app.craft.figure import Figure, total
from app.craft.odds import normal_quantile
from app.planning.answers import Reckoning, ShelfLine

PASSES = 30
"""The reserve depends on what is knit, and that on the reserve; it settles long before."""


@dataclass(frozen=True, slots=True)
class Need:
    """What the parts take in all, which tells how unsure it is; metres of a yarn that no row takes
    (tails, a swatch, mending); and how many yarns must all suffice."""

    whole: Figure
    beside_m: float
    yarns: int


@dataclass(frozen=True, slots=True)
class Supply:
    """Metres there are of a yarn, and what of them rows may take as surely as the plan asks."""

    there_m: float
    usable_m: float

    @property
    def reserve_m(self) -> float:
        return self.there_m - self.usable_m


def supply_of(
    book: Book, reckoning: Reckoning, plan: Plan, parts: set[str], yarn_id: str, need: Need
) -> Supply:
    """What is promised of a yarn to these parts, in this plan's reserve, or free."""
    held = total(
        (
            line.held.scaled(metres / line.held.value)
            for line in reckoning.shelf.values()
            if book.holding[line.holding_id].yarn_id == yarn_id
            and (metres := _for_parts(line, plan, parts)) > 0
        ),
        "m",
    )
    sureness = (plan.sureness_pct or book.settings.sureness_pct) / 100
    z = normal_quantile(sureness ** (1 / need.yarns))
    unsure = need.whole.u / need.whole.value if need.whole.value > 0 else 0.0
    there = usable = max(0.0, held.value - need.beside_m)
    for _ in range(PASSES):
        usable = max(0.0, there - z * hypot(usable * unsure, held.u))
    return Supply(held.value, usable)


def _for_parts(line: ShelfLine, plan: Plan, parts: set[str]) -> float:
    own = (
        one.m
        for one in line.promised_to
        if one.plan_id == plan.id and (one.part_id is None or one.part_id in parts)
    )
    return line.free_m + sum(own)
