"""Make the part shorter whose length is free."""

from collections.abc import Iterator
from functools import partial

from app.planning.ways_out.lengths import (
    STEP_MM,
    FreeLength,
    even_rows,
    free_lengths,
    most_mm,
    shorter,
)
from app.planning.ways_out.situation import Situation, least
from app.planning.ways_out.way import Amount, Effort, Proposal, Said, Way, simple
from app.planning.what_if import WhatIf

MOST_SHARE = 0.15
"""A garment made shorter by more than this is another garment (assumed)."""

EVENINGS_A_CM = 0.25
"""What a centimetre of length is held to be worth (assumed)."""


def find(situation: Situation) -> Iterator[Proposal]:
    """One proposal for each part or pair whose length is free: as little as is enough."""
    for free in free_lengths(situation):
        most = most_mm(situation, free, MOST_SHARE)
        steps = range(STEP_MM, most + 1, STEP_MM)
        if steps:
            mm, change, _ = least(situation, steps, partial(_shorter, situation, free))
            yield _proposal(situation, free, mm, change)


def _shorter(situation: Situation, free: FreeLength, mm: int) -> WhatIf:
    return situation.changed(shorter(situation, free, mm))


def _proposal(situation: Situation, free: FreeLength, mm: int, change: WhatIf) -> Proposal:
    gauge = situation.needs[free.parts[0].id].gauge
    assert gauge is not None
    rows = even_rows(gauge, mm)
    name = free.parts[0].name if len(free.parts) == 1 else free.word
    title = Said(f"Make the {name.lower()} {{}} shorter", (Amount(mm, "size"),))
    becomes = Said(
        "{} rows fewer; " + ("they come to {}" if free.several else "it comes to {}"),
        (Amount(rows, "count"), Amount(free.length_mm - mm, "size")),
    )
    effort = Effort(mm / 10 * EVENINGS_A_CM, Said("a shorter garment, and less to knit"))
    return simple(situation, f"shorten-{free.word}", title, effort, change, (becomes,))


WAY = Way("shorten", find)
