"""Whether what is short can still be spun in time: hours of knitting until the yarn ends, against
the hours of work on the wool and the days it dries."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta
from math import floor

from app.book.book import Book
from app.craft.figure import Figure, total
from app.planning.answers import Reckoning
from app.planning.knitting.fade_when import sure_metres
from app.planning.knitting.forecast import Forecast, YarnAhead
from app.planning.knitting.time_left import TimeLeft, time_left
from app.planning.time_days import DRYING_DAYS
from app.planning.time_needed import Job, jobs

WET = ("scour", "finish")
"""Work after which wool dries."""


@dataclass(frozen=True, slots=True)
class InTime:
    """The yarn surely lasts for `lasts` hours of knitting; what is short (`short_m`) takes `spin`
    hours and `dry_days`. Begun on `begin_by` the knitting does not wait for it; that day is past
    by `late_days` where it has to. An evening is either knit or spun."""

    plan_id: str
    yarn_id: str
    short_m: float
    lasts: Figure
    spin: Figure
    dry_days: int
    begin_by: date
    late_days: int


def spin_in_time(book: Book, reckoning: Reckoning, today: date) -> tuple[InTime, ...]:
    """An answer for each yarn that a garment on the needles lacks and its maker can spin."""
    by_plan = {one.plan.id: one for one in jobs(book, reckoning)}
    return tuple(
        found
        for answer in reckoning.plans
        if answer.state == "being knit" and answer.plan_id in by_plan
        for found in _of_plan(Forecast(book, answer), reckoning, by_plan[answer.plan_id], today)
    )


def _of_plan(ahead: Forecast, reckoning: Reckoning, job: Job, today: date) -> Iterator[InTime]:
    left = time_left(ahead, reckoning.learnt)
    for yarn in ahead.yarns:
        tasks = [one for one in job.tasks if one.yarn_id == yarn.told.yarn_id]
        if tasks and left.metres > 0:
            yield _in_time(ahead, yarn, left, job, today)


def _in_time(ahead: Forecast, yarn: YarnAhead, left: TimeLeft, job: Job, today: date) -> InTime:
    yarn_id = yarn.told.yarn_id or ""
    tasks = [one for one in job.tasks if one.yarn_id == yarn_id]
    evening_h = ahead.book.settings.evening_minutes / 60
    lasts = left.hours.scaled(sure_metres(ahead, yarn) * yarn.pace.value / left.metres)
    dry_days = DRYING_DAYS * sum(1 for one in tasks if one.work in WET)
    begin_by = today + timedelta(floor(lasts.value / evening_h) - dry_days)
    return InTime(
        plan_id=ahead.plan.id,
        yarn_id=yarn_id,
        short_m=yarn.told.to_make_m,
        lasts=lasts,
        spin=total((one.hours for one in tasks), "h"),
        dry_days=dry_days,
        begin_by=max(today, begin_by),
        late_days=max(0, (today - begin_by).days),
    )
