"""The plan with skeins that are still to be made, of the yarns it is short of."""

from collections.abc import Mapping

from app.book.yarn import Yarn
from app.planning.fleeces import losses_for
from app.planning.reckoning import reckon
from app.planning.ways_out.situation import Situation, filled
from app.planning.what_if import ToCome, WhatIf, between

MORE = (1.0, 1.02, 1.05, 1.1, 1.2, 1.35)
"""What is made is measured with an error of its own, so a little more is tried until it does."""


def lacking(situation: Situation) -> dict[str, float]:
    """Metres still short of each yarn once what is free is promised."""
    book = filled(situation.book, situation.plan_id)
    groups = reckon(book).plan(situation.plan_id).groups
    return {one.yarn_id: one.short_m for one in groups if one.yarn_id and one.short_m > 0}


def with_skeins(situation: Situation, metres: Mapping[str, float]) -> WhatIf:
    """The change with one new skein of so many metres for each yarn, all promised as needed."""
    to_come = tuple(_skein(situation, yarn_id, m) for yarn_id, m in metres.items() if m > 0)
    there = WhatIf(to_come=to_come).in_book(situation.book)
    change = between(situation.book, filled(there, situation.plan_id))
    return WhatIf(change.put, change.gone, to_come)


def unclaimed_g(situation: Situation, fleece_id: str) -> float:
    """Grams of finished yarn that a fleece can still give beyond what plans call for."""
    one = situation.reckoning.fleeces[fleece_id]
    return one.yarn_g.value * (1 - one.called_for_g / one.now_g) if one.now_g > 0 else 0.0


def to_spin_g(situation: Situation, yarn_g: float) -> float:
    """Grams of fibre that go over the wheel for so much finished yarn."""
    losses = losses_for("carded", situation.book.settings.steps)
    return yarn_g / ((1 - losses.spin) * (1 - losses.finish))


def _skein(situation: Situation, yarn_id: str, metres: float) -> ToCome:
    yarn: Yarn = situation.book.yarn[yarn_id]
    tex = situation.lots.tex(yarn_id)
    grams = metres * tex.value / 1000 if tex else 0.0
    return ToCome(f"{yarn.name}, to be made", yarn_id, round(1000 * metres), round(1000 * grams))
