"""The next size down of the pattern it is knit from."""

from collections.abc import Iterator
from dataclasses import replace

from app.book.pattern import Pattern, PatternSize
from app.book.shape import Stated
from app.planning.from_pattern import case_of, counted_parts, stated_parts
from app.planning.redraw import replaced
from app.planning.ways_out.situation import Situation
from app.planning.ways_out.way import Amount, Effort, Proposal, Said, Way, simple
from app.planning.what_if import between

EVENINGS = 2.0
"""What a whole size is held to be worth (assumed)."""


def find(situation: Situation) -> Iterator[Proposal]:
    """The size next below the one taken, for a plan that is not begun."""
    plan = situation.plan
    pattern = situation.book.pattern.get(plan.pattern_id or "")
    smaller = _next_down(pattern, plan.size) if pattern else None
    if pattern and smaller and plan.gauge and plan.state == "intended":
        stated = any(isinstance(one.shape, Stated) for one in situation.parts)
        make = stated_parts if stated else counted_parts
        taken = replace(plan, size=smaller.name)
        parts = make(taken, pattern, smaller, plan.gauge, case_of(plan))
        if parts:
            drawn = replaced(situation.book, taken, parts).in_book(situation.book)
            change = situation.also(between(situation.book, drawn))
            yield simple(situation, "size", _title(smaller), _EFFORT, change)


def _next_down(pattern: Pattern, name: str) -> PatternSize | None:
    now = next((one for one in pattern.sizes if one.name == name), None)
    below = [one for one in pattern.sizes if now and one.width_mm < now.width_mm]
    return max(below, key=lambda one: one.width_mm, default=None)


def _title(size: PatternSize) -> Said:
    width = (Amount(size.width_mm, "size"),)
    return Said(f"Knit it in size {size.name}, {{}} around in the pattern", width)


_EFFORT = Effort(EVENINGS, Said("a smaller garment"))

WAY = Way("size", find)
