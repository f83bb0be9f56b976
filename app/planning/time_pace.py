"""Hours of work at the maker's own pace, or at the usual one until she has noted some."""

from math import exp

from app.craft.figure import Figure
from app.craft.ranges import hours_for
from app.craft.working import Step
from app.planning.learning import Learnt
from app.planning.learning.factors import PACE_NAME
from app.planning.learning.in_force import learned_from
from app.planning.learning.stints_seen import work_of
from app.planning.learning.usual import PACES


def hours_of(learnt: Learnt, work: str, amount: float, yarn_id: str | None = None) -> Figure:
    """Hours for metres or grams of a kind of work, in the unit of its pace; an exact zero for
    nothing. KeyError for work that has no pace."""
    if amount <= 0:
        return Figure(0.0, "h")
    work = work_of(learnt.book, work, yarn_id)
    times = learnt.pace(work, yarn_id)
    hours = hours_for(amount, PACES[work].per_hour * exp(times.mean))
    return Figure(hours, "h", {f"pace of {work}": hours * times.sd})


def pace_step(learnt: Learnt, work: str, yarn_id: str | None = None) -> Step:
    """The pace that is reckoned with, and whose it is. KeyError for work that has no pace."""
    work = work_of(learnt.book, work, yarn_id)
    usual, times = PACES[work], learnt.pace(work, yarn_id)
    pace = usual.per_hour * exp(times.mean)
    seen = learnt.seen(PACE_NAME + work)
    how = f"{learned_from(seen)}; before: {usual.per_hour:g}" if seen else "nobody's own"
    standing = "measured" if seen else usual.standing
    unit = f"{usual.unit}/h"
    return Step(f"Pace: {work}", how, pace, unit, pace * times.sd, usual.source, standing)
