"""Knit what has to be as long as it is first, and let the free part end where the yarn ends."""

from collections.abc import Iterator
from dataclasses import replace
from functools import partial

from app.book.plan import Part
from app.planning.answers import PlanAnswer
from app.planning.ways_out.lengths import STEP_MM, FreeLength, free_lengths, most_mm, shorter
from app.planning.ways_out.situation import Situation, least
from app.planning.ways_out.way import Amount, Effort, Proposal, Said, Way, simple
from app.planning.what_if import WhatIf

MOST_SHARE = 0.5
"""Below half its length nobody would knit it (assumed)."""

EVENINGS_A_CM = 0.2
"""What a centimetre of length is held to be worth, where it may still be had (assumed)."""


def find(situation: Situation) -> Iterator[Proposal]:
    """One proposal for each part whose length is free and that is not begun, if other parts have a
    fixed one and it then reaches as surely as was asked."""
    for free in free_lengths(situation):
        steps = range(STEP_MM, most_mm(situation, free, MOST_SHARE) + 1, STEP_MM)
        begun = any(situation.begun(one) for one in free.parts)
        if not steps or begun or len(free.parts) == len(situation.parts):
            continue
        mm, change, after = least(situation, steps, partial(_last, situation, free))
        if after.enough:
            yield _proposal(situation, free, mm, change, after)


def _last(situation: Situation, free: FreeLength, mm: int) -> WhatIf:
    """The free part behind all others, and only as long as is sure."""
    mine = {one.id for one in free.parts}
    order: list[Part] = [one for one in situation.parts if one.id not in mine]
    order += shorter(situation, free, mm)
    placed = [replace(one, position=place) for place, one in enumerate(order, 1)]
    old = {one.id: one for one in situation.parts}
    return situation.changed(one for one in placed if old[one.id] != one)


def _proposal(
    situation: Situation, free: FreeLength, mm: int, change: WhatIf, after: PlanAnswer
) -> Proposal:
    name = (free.parts[0].name if len(free.parts) == 1 else free.word).lower()
    metres = sum(situation.answers[one.id].need.value for one in free.parts)
    likely = min(free.length_mm, free.length_mm - mm + after.left_m / metres * free.length_mm)
    them, they_come = ("them", "They come") if free.several else ("it", "It comes")
    title = Said(f"Knit the {name} last, and end {them} where the yarn ends")
    note = Said(
        f"{they_come} to at least {{}}, likely to {{}}, of {{}}",
        (
            Amount(free.length_mm - mm, "size"),
            Amount(likely, "size"),
            Amount(free.length_mm, "size"),
        ),
    )
    effort = Effort(mm / 10 * EVENINGS_A_CM, Said("the length is known only at the end"))
    return simple(situation, f"last-{free.word}", title, effort, change, (note,))


WAY = Way("last", find)
