"""How long a garment will still take, what fits in a journey, and what a day asks of each week."""

from dataclasses import dataclass
from datetime import date

from app.planning.knitting.forecast import Forecast
from app.planning.knitting.time_left import TimeLeft, each_week, journey, time_left
from app.web.forms.filled import Filled
from app.web.forms.journey import read_journey
from app.web.pages.forecast_place import piece_said
from app.web.shown import THIN, Shown
from app.work.reckoning import Known


@dataclass(frozen=True, slots=True)
class TimeSaid:
    """`left` and `weekly` are sentences; `form` holds the hours of a journey, `answer` what they
    knit."""

    left: str
    weekly: str
    form: Filled
    answer: str


def time_said(ahead: Forecast, known: Known, shown: Shown, today: date, asked: Filled) -> TimeSaid:
    """The hours ahead in words."""
    left = time_left(ahead, known.reckoning.learnt)
    reader, hours = read_journey(asked.values, known.book.settings)
    return TimeSaid(
        left=_left(left, shown),
        weekly=_weekly(ahead, left, shown, today),
        form=reader.filled(),
        answer=_journey(ahead, left, hours, shown) if hours and reader.ok else "",
    )


def _left(left: TimeLeft, shown: Shown) -> str:
    whose = (
        "at your own pace" if left.learned else "at a usual pace; note some knitting to know yours"
    )
    return f"About {_hours(left.hours.value, left.hours.u, shown)} of knitting are left, {whose}."


def _weekly(ahead: Forecast, left: TimeLeft, shown: Shown, today: date) -> str:
    wanted_by = ahead.plan.wanted_by
    if wanted_by is None:
        return ""
    evening_h = ahead.book.settings.evening_minutes / 60
    asked = each_week(left, wanted_by, today, evening_h)
    if asked is None:
        return f"It was wanted by {shown.day(wanted_by)}."
    hours = _hours(asked.hours.value, asked.hours.u, shown)
    evenings = shown.number(asked.evenings, 1, least=0)
    day = shown.day(wanted_by)
    return f"To be ready by {day} it asks {hours} a week: {evenings} of your evenings."


def _journey(ahead: Forecast, left: TimeLeft, hours: float, shown: Shown) -> str:
    found = journey(ahead, left, hours)
    if found is None:
        return "Nothing is left to knit."
    to = found.to
    piece = piece_said(to)
    rows = "one row" if found.rows == 1 else f"{found.rows} rows"
    along = shown.short_length(found.most_m)
    told = f"{shown.number(hours, 1, least=0)}{THIN}h"
    return (
        f"In {told} you would knit about {rows}, to row {to.rows} of {piece}. "
        f"It takes about {shown.length(found.metres)}; with {along} along you will "
        "hardly run out."
    )


def _hours(value: float, u: float, shown: Shown) -> str:
    places = 0 if value >= 10 else 1
    return f"{shown.number(value, places)} ± {shown.number(u, places)}{THIN}h"
