"""Buy more of a bought yarn, in whole balls."""

from collections.abc import Iterator
from functools import partial

from app.craft.odds import whole_up
from app.planning.ways_out.situation import Situation, least
from app.planning.ways_out.way import Amount, Effort, Proposal, Said, Way
from app.planning.ways_out.yarn_to_come import lacking, with_skeins
from app.planning.what_if import WhatIf

EVENINGS = 1.0
"""A way to the shop and the price (assumed)."""

MOST_MORE = 3
"""Balls beyond the fewest that are tried."""


def find(situation: Situation) -> Iterator[Proposal]:
    """One proposal for each bought yarn that is short; the work list says so already."""
    for yarn_id, metres in lacking(situation).items():
        yarn = situation.book.yarn[yarn_id]
        if yarn.bought and yarn.ball_mm:
            fewest = whole_up(metres * 1000 / yarn.ball_mm)
            steps = range(fewest, fewest + MOST_MORE)
            buy = partial(_balls, situation, yarn_id, yarn.ball_mm)
            balls, seen, _ = least(situation, steps, buy)
            yield _proposal(situation, yarn_id, balls, seen)


def _balls(situation: Situation, yarn_id: str, ball_mm: int, balls: int) -> WhatIf:
    return with_skeins(situation, {yarn_id: balls * ball_mm / 1000})


def _proposal(situation: Situation, yarn_id: str, balls: int, seen: WhatIf) -> Proposal:
    name = situation.book.yarn[yarn_id].name
    what = "{} ball of" if balls == 1 else "{} balls of"
    return Proposal(
        key=f"buy-{yarn_id}",
        title=Said(f"Buy {what} {name}", (Amount(balls, "count"),)),
        effort=Effort(EVENINGS, Said("what the balls cost; ask for the same dye lot")),
        change=WhatIf(),
        seen=seen,
        about=situation.plan_id,
        notes=(Said("So it stands once the yarn is there"),),
        listed=True,
    )


WAY = Way("buy", find)
