"""Less ease: the garment as it was drawn, a little closer to the body."""

from collections.abc import Iterator
from dataclasses import replace
from functools import partial

from app.book.design import Design
from app.book.person import Measure
from app.planning.design import taken_for
from app.planning.redraw import redraw
from app.planning.ways_out.situation import Situation, least
from app.planning.ways_out.way import Amount, Effort, Proposal, Said, Way, simple
from app.planning.what_if import WhatIf, between

CHEST = "chest"
LEAST_CM = 0.0
"""Closer than the body itself is a wish of its own, not a way out (assumed)."""

MOST_CM = 6
"""Less by more than this is another garment (assumed)."""

EVENINGS_A_CM = 0.4
"""What a centimetre of ease is held to be worth (assumed)."""


def find(situation: Situation) -> Iterator[Proposal]:
    """As little less as is enough, for a garment drawn from a chest and not yet begun."""
    now = ease_cm(situation)
    if now is None or situation.plan.state != "intended":
        return
    steps = [cm for cm in range(1, MOST_CM + 1) if now - cm >= LEAST_CM and _can_be(situation, cm)]
    if steps:
        cm, change, _ = least(situation, steps, partial(closer, situation))
        title = Said("Give it {} less ease around the chest", (Amount(10 * cm, "size"),))
        note = Said("{} of ease are left of {}", (_mm(now - cm), _mm(now)))
        effort = Effort(cm * EVENINGS_A_CM, Said("a closer fit"))
        yield simple(situation, "ease", title, effort, change, (note,))


def ease_cm(situation: Situation) -> float | None:
    """The ease around the chest it is drawn with, in cm; None where no chest is fitted."""
    plan = situation.plan
    if plan.design is None or plan.gauge is None:
        return None
    return taken_for(plan.design, plan.gauge).wanted.ease.get(CHEST)


def closer(situation: Situation, cm: float) -> WhatIf:
    """The garment drawn anew with so much less ease. ValueError, in words, where it cannot be."""
    design, now = situation.plan.design, ease_cm(situation)
    assert design is not None
    assert now is not None
    plan = replace(situation.plan, design=_with_ease(design, now - cm))
    drawn = redraw(situation.book, plan).in_book(situation.book)
    return situation.also(between(situation.book, drawn))


def _can_be(situation: Situation, cm: float) -> bool:
    try:
        closer(situation, cm)
    except ValueError:
        return False
    return True


def _with_ease(design: Design, cm: float) -> Design:
    others = tuple(one for one in design.ease if one.name != CHEST)
    return replace(design, ease=(*others, Measure(CHEST, round(10 * cm))))


def _mm(cm: float) -> Amount:
    return Amount(10 * cm, "size")


WAY = Way("ease", find)
