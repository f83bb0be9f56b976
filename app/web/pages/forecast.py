"""A garment on the needles looked ahead at: balls, yarns, what is to be decided, and how long."""

from dataclasses import dataclass
from datetime import date

from app.book.book import Book
from app.planning.knitting.ball_line import ball_line
from app.planning.knitting.forecast import BallAhead, Forecast, YarnAhead
from app.planning.knitting.spin_in_time import spin_in_time
from app.web.forms.filled import Filled
from app.web.pages.answer import Sentence, Tone, yarn_name
from app.web.pages.forecast_decide import decisions, in_time_said
from app.web.pages.forecast_place import END, piece_said, place_said
from app.web.pages.forecast_plot import BallPlot, ball_plot
from app.web.pages.forecast_time import TimeSaid, time_said
from app.web.shown import Shown
from app.work.reckoning import Known


@dataclass(frozen=True, slots=True)
class BallShown:
    """A ball: how far it reaches as a sentence, in figures, and drawn."""

    code: str
    url: str
    said: Sentence
    now: str
    expected: str
    surely: str
    at_most: str
    odds: str
    left: str
    plot: BallPlot


@dataclass(frozen=True, slots=True)
class YarnShown:
    """A yarn by the one reckoning: what is there of it, what is wanted, and how far it reaches."""

    name: str
    there: str
    wanted: str
    odds: str
    expected: str
    surely: str


@dataclass(frozen=True, slots=True)
class Ahead:
    """`decide` are sentences of what is to be decided, `in_time` those of what is to be spun."""

    plan_id: str
    balls: tuple[BallShown, ...]
    yarns: tuple[YarnShown, ...]
    decide: tuple[str, ...]
    in_time: tuple[str, ...]
    short: bool
    time: TimeSaid


def ahead_page(
    known: Known, shown: Shown, plan_id: str, today: date, asked: Filled | None = None
) -> Ahead | None:
    """What is ahead of a garment that is being knit; None for any other, and for one without rows.
    `asked` holds the hours of a journey as they were typed."""
    book, told = known.book, known.reckoning.plan(plan_id)
    ahead = Forecast(book, told)
    if told.state != "being knit" or not ahead.yarns:
        return None
    spin = [one for one in spin_in_time(book, known.reckoning, today) if one.plan_id == plan_id]
    return Ahead(
        plan_id=plan_id,
        balls=tuple(_ball(one, shown) for one in ahead.balls),
        yarns=tuple(_yarn(one, book, shown) for one in ahead.yarns),
        decide=tuple(decisions(ahead, book, shown)),
        in_time=tuple(in_time_said(one, book, shown) for one in spin),
        short=told.short_m > 0,
        time=time_said(ahead, known, shown, today, asked or Filled()),
    )


def _ball(one: BallAhead, shown: Shown) -> BallShown:
    reach = one.reach
    return BallShown(
        code=one.on_needles.code,
        url=f"/skeins/{one.on_needles.holding_id}",
        said=_said(one, shown),
        now=shown.mass(reach.now_g),
        expected=place_said(reach.expected),
        surely=place_said(reach.at_least),
        at_most=place_said(reach.at_most),
        odds=shown.odds(reach.odds),
        left=_left(one, shown),
        plot=ball_plot(ball_line(one), one.on_needles.code, shown),
    )


def _said(one: BallAhead, shown: Shown) -> Sentence:
    reach, ends = one.reach, one.reach.expected
    piece = piece_said(one.here)
    tone: Tone = "enough" if reach.odds >= 0.5 else "idle"
    lead = f"{reach.code} ends about {place_said(ends)}"
    if ends is None:
        lead = f"{reach.code} reaches {END}"
    surely = f", surely not before {place_said(reach.at_least)}" if reach.at_least else ""
    odds = shown.odds(reach.odds)
    rest = f"{surely}. It reaches the end of {piece} {odds}: {_left(one, shown)}."
    return Sentence(tone, lead, rest)


def _left(one: BallAhead, shown: Shown) -> str:
    left = one.reach.left_g
    if left < 0:
        return f"about {shown.short_mass(-left)} more will be needed"
    return f"about {shown.mass(left)} will be left"


def _yarn(one: YarnAhead, book: Book, shown: Shown) -> YarnShown:
    return YarnShown(
        name=yarn_name(one.told.yarn_id, book),
        there=shown.length_give_or_take(one.there),
        wanted=shown.length_give_or_take(one.wanted),
        odds=shown.odds(one.told.odds),
        expected=place_said(one.expected),
        surely=place_said(one.at_least),
    )
