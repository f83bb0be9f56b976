"""Today: what is short, what is being knit, what is drying, what comes next.

What only a garment on the needles, or wool that dries, asks for is brought in by those: this is the
page that the start waits for.
"""

from dataclasses import dataclass
from datetime import date

from app.book.book import Book
from app.book.words import FIBRE_KINDS
from app.planning.answers import Reckoning, Uncovered
from app.planning.look_again import ToLook, to_look_at
from app.web.pages.garments import shelf_sentence
from app.web.pages.plan_line import PlanLine, plan_lines
from app.web.pages.quick import QuickForm, quick_form
from app.web.pages.wool_name import wool_name
from app.web.pages.work_list import WorkRow, work_row
from app.web.shown import Shown

NEXT = 5
"""How many lines of the work list Today shows."""


@dataclass(frozen=True, slots=True)
class Drying:
    """Wool that lies drying, how far it is, and what it will weigh."""

    name: str
    told: str
    url: str
    weigh_url: str


@dataclass(frozen=True, slots=True)
class LookRow:
    """Wool to be looked at for moth; `looked_url` takes the answer, where its page has none."""

    name: str
    told: str
    url: str
    looked_url: str


@dataclass(frozen=True, slots=True)
class NeedleRow:
    """A garment on the needles whose yarn will not last, and what that asks for."""

    name: str
    url: str
    ways_url: str
    told: str


@dataclass(frozen=True, slots=True)
class UncoveredRow:
    """A promise the shelf no longer holds."""

    lost: Uncovered
    url: str


@dataclass(frozen=True, slots=True)
class TodayPage:
    """`empty` where the book knows of no wool and no garment yet."""

    empty: bool
    quick: QuickForm
    summary: str
    on_needles: tuple[NeedleRow, ...]
    short: tuple[PlanLine, ...]
    being_knit: tuple[PlanLine, ...]
    waiting: tuple[PlanLine, ...]
    drying: tuple[Drying, ...]
    to_look: tuple[LookRow, ...]
    uncovered: tuple[UncoveredRow, ...]
    work: tuple[WorkRow, ...]
    more_work: int


def today_page(book: Book, reckoning: Reckoning, shown: Shown, today: date) -> TodayPage:
    lines = plan_lines(book, reckoning, shown)
    to_do = [one for one in reckoning.work if not one.done]
    return TodayPage(
        empty=not (book.fleeces or book.yarns or book.plans),
        quick=quick_form(book),
        summary=shelf_sentence(lines),
        on_needles=_on_needles(book, reckoning, shown, today),
        short=tuple(one for one in lines if one.answer.tone == "short"),
        being_knit=tuple(
            one for one in lines if one.state == "being knit" and one.answer.tone != "short"
        ),
        waiting=tuple(one for one in lines if one.answer.tone == "waiting"),
        drying=_drying(book, shown),
        to_look=tuple(_look(book, one, shown) for one in to_look_at(book, today)),
        uncovered=tuple(
            UncoveredRow(one, f"/garments/{one.plan_id}") for one in reckoning.uncovered
        ),
        work=tuple(work_row(one) for one in to_do[:NEXT]),
        more_work=max(0, len(to_do) - NEXT),
    )


def _on_needles(
    book: Book, reckoning: Reckoning, shown: Shown, today: date
) -> tuple[NeedleRow, ...]:
    if not any(one.state == "being knit" for one in reckoning.plans):
        return ()
    from app.planning.knitting.spin_in_time import spin_in_time
    from app.web.pages.forecast_decide import in_time_said

    return tuple(
        NeedleRow(
            name=book.plan[one.plan_id].name,
            url=f"/garments/{one.plan_id}/needles",
            ways_url=f"/garments/{one.plan_id}/ways-out",
            told=in_time_said(one, book, shown),
        )
        for one in spin_in_time(book, reckoning, today)
    )


def _drying(book: Book, shown: Shown) -> tuple[Drying, ...]:
    if not any(one.state == "drying" for one in book.holdings):
        return ()
    from app.planning.drying import all_drying
    from app.web.pages.drying import dry_url, drying_told

    return tuple(
        Drying(
            name=wool_name(book, one.holding),
            told=drying_told(one, shown),
            url=f"/fleeces/{one.holding.fleece_id}",
            weigh_url=dry_url(one.holding.fleece_id, one.holding.id),
        )
        for one in all_drying(book)
        if one.holding.fleece_id
    )


def _look(book: Book, one: ToLook, shown: Shown) -> LookRow:
    holding = one.holding
    wool = holding.fleece_id in book.fleece and holding.kind in FIBRE_KINDS
    when = f"look again on {shown.day(holding.look_again)}" if holding.look_again else ""
    apart = "kept apart until it was looked at" if holding.apart else ""
    told = "due" if one.due else when
    place = f"in {holding.place}" if holding.place else ""
    return LookRow(
        name=wool_name(book, holding),
        told=", ".join(filter(None, (told, apart, place))),
        url=f"/fleeces/{holding.fleece_id}" if wool else f"/skeins/{holding.id}",
        looked_url=f"/wool-book/{holding.id}/looked",
    )
