"""What is still to be decided while a garment is knit: how long a free part may become, and
whether a ball does one piece of a pair but not both."""

from collections.abc import Iterator
from dataclasses import dataclass
from statistics import mean

from app.book.words import Place as Where
from app.craft.odds import normal_quantile
from app.planning.knitting.forecast import BallAhead, Forecast, YarnAhead
from app.planning.needs import PartNeed
from app.planning.places import place_of

FREE: tuple[Where, ...] = ("body", "back", "front", "sleeve", "piece")
"""Places whose length is a matter of taste."""

SURE, LOST = 0.75, 0.25
"""A ball does a piece if it reaches its end more often than this, and does not below that."""


@dataclass(frozen=True, slots=True)
class MayBecome:
    """The length of a part, in mm: as planned, as it may become as surely as was asked for, and as
    it is likely to."""

    part_id: str
    part: str
    planned_mm: float
    surely_mm: float
    likely_mm: float


@dataclass(frozen=True, slots=True)
class OneNotBoth:
    """A ball that reaches the end of this piece of a pair, but not of the next as well."""

    code: str
    part: str
    odds_one: float
    odds_both: float


def may_become(ahead: Forecast) -> tuple[MayBecome, ...]:
    """How long each free part that is not done may become, if it alone takes what is over or goes
    without what is missing."""
    return tuple(
        found
        for yarn in ahead.yarns
        for need in ahead.needs
        if (found := _length(ahead, yarn, need)) is not None
    )


def one_not_both(ahead: Forecast) -> tuple[OneNotBoth, ...]:
    """The balls of which that is to be said."""
    return tuple(found for ball in ahead.balls for found in _of_pair(ball))


def _length(ahead: Forecast, yarn: YarnAhead, need: PartNeed) -> MayBecome | None:
    legs = [one for one in yarn.course.legs if one.part_id == need.part.id]
    left = [len(one.rows) - ahead.done.get((one.part_id, one.piece), 0) for one in legs]
    if need.gauge is None or place_of(need.part) not in FREE or not any(one > 0 for one in left):
        return None
    open_legs = [leg for leg, rows in zip(legs, left, strict=True) if rows > 0]
    row_m = mean(open_legs[0].rows) * yarn.pace.value * len(open_legs)
    sure_m = yarn.margin.value - normal_quantile(ahead.told.sureness) * yarn.margin.u
    row_mm = 100 / need.gauge.rows
    planned = len(open_legs[0].rows)
    least = planned - max(left)
    rows = [max(least, planned + metres / row_m) for metres in (sure_m, yarn.margin.value)]
    return MayBecome(
        need.part.id, need.part.name, planned * row_mm, rows[0] * row_mm, rows[1] * row_mm
    )


def _of_pair(ahead: BallAhead) -> Iterator[OneNotBoth]:
    one, last = ahead.on_needles, ahead.on_needles.last
    following = one.course.leg(last.part_id, last.piece + 1)
    if following is None:
        return
    both = one.course.end_of(last.part_id, last.piece + 1) - one.begun
    odds = ahead.ball.odds(both)
    if ahead.reach.odds > SURE and odds < LOST:
        yield OneNotBoth(one.code, following.part, ahead.reach.odds, odds)
