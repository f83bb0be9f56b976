"""Where to begin a fade, or to alternate, so that a yarn that will not last reaches the end."""

from bisect import bisect_right
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import accumulate
from typing import Literal

from app.craft.odds import normal_quantile
from app.planning.knitting.course import Leg
from app.planning.knitting.done import metres_done
from app.planning.knitting.forecast import Forecast, YarnAhead
from app.planning.sequence_fade import ENDS_AT


@dataclass(frozen=True, slots=True)
class RowAhead:
    """A row still to knit, of one piece or of `pieces` alike at once, with its planned metres."""

    part_id: str
    part: str
    pieces: int
    row: int
    metres: float


@dataclass(frozen=True, slots=True)
class FadeWhen:
    """Begin a `fade` at this row, or `alternate` from it: `share` is that of the rows the yarn
    knits there, on the average. Then the yarn lasts to the end as surely as was asked."""

    kind: Literal["fade", "alternate"]
    yarn_id: str | None
    at: RowAhead
    share: float


def fades_when(ahead: Forecast) -> tuple[FadeWhen, ...]:
    """An answer for each yarn that does not surely reach the end, where there is one."""
    found = (_when(ahead, yarn) for yarn in ahead.yarns if yarn.at_least is not None)
    return tuple(one for one in found if one)


def sure_metres(ahead: Forecast, yarn: YarnAhead) -> float:
    """Planned metres of the rows to come that the yarn surely knits; none below zero."""
    surely = yarn.margin.value - normal_quantile(ahead.told.sureness) * yarn.margin.u
    to_come = yarn.course.metres - metres_done(yarn.course, ahead.done)
    return min(max(0.0, to_come + surely / yarn.pace.value), to_come)


def rows_ahead(ahead: Forecast, yarn: YarnAhead) -> tuple[RowAhead, ...]:
    """The rows to come of a yarn; pieces of a pair that are as far as each other are knit alike."""
    legs = yarn.course.legs
    return tuple(
        row
        for part_id in dict.fromkeys(one.part_id for one in legs)
        for row in _of_part(ahead, [one for one in legs if one.part_id == part_id])
    )


def _of_part(ahead: Forecast, legs: list[Leg]) -> Iterator[RowAhead]:
    done = [ahead.done.get((one.part_id, one.piece), 0) for one in legs]
    if len(set(done)) == 1:
        yield from _rows(legs[0], done[0], len(legs))
    else:
        for leg, rows in zip(legs, done, strict=True):
            yield from _rows(leg, rows, 1)


def _rows(leg: Leg, done: int, pieces: int) -> Iterator[RowAhead]:
    for at, metres in enumerate(leg.rows[done:], done + 1):
        yield RowAhead(leg.part_id, leg.part, pieces, at, metres * pieces)


def _when(ahead: Forecast, yarn: YarnAhead) -> FadeWhen | None:
    rows, have = rows_ahead(ahead, yarn), sure_metres(ahead, yarn)
    metres = [one.metres for one in rows]
    whole = sum(metres)
    if not rows or have >= whole or have < ENDS_AT * whole:
        return None
    begins = bisect_right(range(len(rows)), have, key=lambda at: _taken(metres, at)) - 1
    if begins < 0:
        return FadeWhen("alternate", yarn.told.yarn_id, rows[0], have / whole)
    share = (have - sum(metres[:begins])) / sum(metres[begins:])
    return FadeWhen("fade", yarn.told.yarn_id, rows[begins], share)


def _taken(metres: list[float], begins: int) -> float:
    """Metres of the yarn where it falls evenly from every row to one in four."""
    before = [*accumulate(metres[:begins], initial=0.0)][-1]
    span = max(1, len(metres) - 1 - begins)
    falls = (1 - (1 - ENDS_AT) * at / span for at in range(len(metres) - begins))
    return before + sum(m * share for m, share in zip(metres[begins:], falls, strict=True))
