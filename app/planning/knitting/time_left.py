"""Hours left at the needles, what fits in a journey, and what a wanted-by day asks of each week."""

from dataclasses import dataclass
from datetime import date

from app.craft.figure import Figure
from app.planning.hours import hours_for
from app.planning.knitting.course import Place
from app.planning.knitting.done import metres_done
from app.planning.knitting.forecast import Forecast, PieceDone
from app.planning.learning import Learnt
from app.planning.learning.factors import PACE_NAME
from app.planning.time_pace import hours_of

KNIT = "knit"
HALF_A_STITCH = 0.5


@dataclass(frozen=True, slots=True)
class TimeLeft:
    """Hours still to knit, at the maker's own pace where one was `learned`, else at the usual one;
    the metres they knit in."""

    hours: Figure
    metres: float
    learned: bool


@dataclass(frozen=True, slots=True)
class Journey:
    """What so many hours knit: `rows` in all, up to a place, and the metres they take; `most_m`
    where she knits quicker than expected. None of it beyond the end."""

    hours: float
    rows: int
    to: Place
    metres: float
    most_m: float


@dataclass(frozen=True, slots=True)
class EachWeek:
    """Hours a week, and evenings of hers, that a garment takes to be ready by its day."""

    hours: Figure
    evenings: float


def time_left(ahead: Forecast, learnt: Learnt) -> TimeLeft:
    """Hours left, in metres at her own pace once some knitting was noted, else by the stitches."""
    metres = sum(
        (one.course.metres - metres_done(one.course, ahead.done)) * one.pace.value
        for one in ahead.yarns
    )
    learned = learnt.seen(PACE_NAME + KNIT) > 0
    hours = hours_of(learnt, KNIT, metres) if learned else hours_for(ahead.stitches_left)
    return TimeLeft(hours, metres, learned)


def journey(ahead: Forecast, left: TimeLeft, hours: float) -> Journey | None:
    """What fits in so many hours; None where nothing is left to knit."""
    open_ones = [one for one in ahead.pieces if not one.place.whole]
    if not open_ones or left.hours.value <= 0:
        return None
    share = min(1.0, hours / left.hours.value)
    rows, to = _walk(ahead, open_ones, share * ahead.stitches_left)
    unsure = 1 + 2 * left.hours.u / left.hours.value
    return Journey(hours, rows, to, share * left.metres, min(1.0, share * unsure) * left.metres)


def each_week(left: TimeLeft, wanted_by: date, today: date, evening_h: float) -> EachWeek | None:
    """What the days that are left ask of each week; None on the day itself and after it."""
    days = (wanted_by - today).days
    if days <= 0:
        return None
    hours = left.hours.scaled(7 / max(7, days))
    return EachWeek(hours, hours.value / evening_h)


def _walk(ahead: Forecast, pieces: list[PieceDone], stitches: float) -> tuple[int, Place]:
    """Whole rows in so many stitches, piece after piece, and the place they reach."""
    rows, place = 0, pieces[0].place
    for one in pieces:
        place, start = one.place, one.place.rows
        for count in ahead.stitches_in_rows(one.place.part_id)[start:]:
            if stitches + HALF_A_STITCH < count:
                return rows, place
            stitches -= count
            rows += 1
            place = place.on(1)
    return rows, place
