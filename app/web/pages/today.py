"""Today: what is short, what is being knit, what is drying, what comes next."""

from dataclasses import dataclass

from app.book.book import Book
from app.planning.answers import Reckoning, Uncovered
from app.web.pages.garments import shelf_sentence
from app.web.pages.plan_line import PlanLine, plan_lines
from app.web.pages.quick import QuickForm, quick_form
from app.web.pages.work_list import WorkRow, work_row
from app.web.shown import Shown

NEXT = 5
"""How many lines of the work list Today shows."""


@dataclass(frozen=True, slots=True)
class Drying:
    """A fleece that lies drying: when it agrees with its last weighing it is dry."""

    name: str
    url: str
    weigh_url: str


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
    short: tuple[PlanLine, ...]
    being_knit: tuple[PlanLine, ...]
    waiting: tuple[PlanLine, ...]
    drying: tuple[Drying, ...]
    uncovered: tuple[UncoveredRow, ...]
    work: tuple[WorkRow, ...]
    more_work: int


def today_page(book: Book, reckoning: Reckoning, shown: Shown) -> TodayPage:
    lines = plan_lines(book, reckoning, shown)
    to_do = [one for one in reckoning.work if not one.done]
    return TodayPage(
        empty=not (book.fleeces or book.yarns or book.plans),
        quick=quick_form(book),
        summary=shelf_sentence(lines),
        short=tuple(one for one in lines if one.answer.tone == "short"),
        being_knit=tuple(
            one for one in lines if one.state == "being knit" and one.answer.tone != "short"
        ),
        waiting=tuple(one for one in lines if one.answer.tone == "waiting"),
        drying=_drying(book),
        uncovered=tuple(
            UncoveredRow(one, f"/garments/{one.plan_id}") for one in reckoning.uncovered
        ),
        work=tuple(work_row(one) for one in to_do[:NEXT]),
        more_work=max(0, len(to_do) - NEXT),
    )


def _drying(book: Book) -> tuple[Drying, ...]:
    lying = [one for one in book.holdings if one.state == "drying" and one.put_away is None]
    return tuple(
        Drying(
            name=book.fleece[one.fleece_id].name,
            url=f"/fleeces/{one.fleece_id}",
            weigh_url=f"/fleeces/{one.fleece_id}/weigh?wool={one.id}",
        )
        for one in lying
        if one.fleece_id
    )
