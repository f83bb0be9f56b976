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
class Supply:
    """Metres there are of a yarn, what of them the need may be, and what is kept in reserve."""

    there_m: float
    usable_m: float

    @property
    def reserve_m(self) -> float:
        return self.there_m - self.usable_m


def supply_of(
    book: Book, reckoning: Reckoning, plan: Plan, parts: set[str], yarn_id: str, need: Figure
) -> Supply:
    """What is promised of a yarn to these parts, in this plan's reserve, or free. `need` tells how
    unsure the need of the parts is; the reserve makes it last as surely as the plan asks."""
    held = total(
        (
            line.held.scaled(metres / line.held.value)
            for line in reckoning.shelf.values()
            if book.holding[line.holding_id].yarn_id == yarn_id
            and (metres := _for_parts(line, plan, parts)) > 0
        ),
        "m",
    )
    losses = plan.losses or book.settings.losses
    there = held.value * (1 - losses.unusable_pct / 100)
    z = normal_quantile((plan.sureness_pct or book.settings.sureness_pct) / 100)
    unsure = need.u / need.value if need.value > 0 else 0.0
    usable = there
    for _ in range(PASSES):
        usable = max(0.0, there - z * hypot(usable * unsure, held.u))
    return Supply(there, usable)


def _for_parts(line: ShelfLine, plan: Plan, parts: set[str]) -> float:
    own = (
        one.m
        for one in line.promised_to
        if one.plan_id == plan.id and (one.part_id is None or one.part_id in parts)
    )
    return line.free_m + sum(own)
