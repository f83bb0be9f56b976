"""The finished garments, the latest first: picture, photos, what each took, what was left over."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from app.book.book import Book
from app.book.plan import Plan
from app.book.words import YARN_KINDS
from app.planning.knitting.compared import compared
from app.web.forms.options import names_by_id, with_none
from app.web.pages.answer import counted, done_sentence, number_word
from app.web.pages.finishing import PlannedTaken, taken
from app.web.pages.photos import PhotoShown, photos_shown
from app.web.shown import Shown
from app.work.photo_find import photos_of
from app.work.plan_used import knit_into

PHOTOS = 3
"""So many photos of each."""


@dataclass(frozen=True, slots=True)
class LeftOver:
    """A ball of which some was left over, and how much of it is there still."""

    code: str
    url: str
    now: str


@dataclass(frozen=True, slots=True)
class FinishedRow:
    """A garment: `said` is one sentence where it is not known part by part what it took."""

    plan_id: str
    name: str
    url: str
    person: str
    day: str
    said: str
    taken: PlannedTaken | None
    photos: tuple[PhotoShown, ...]
    left: tuple[LeftOver, ...]
    drawn: bool
    notes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class FinishedPage:
    summary: str
    rows: tuple[FinishedRow, ...]
    yarns: Mapping[str, str]


def finished_page(book: Book, shown: Shown) -> FinishedPage:
    """Every finished garment."""
    plans = [one for one in book.plans if one.state == "finished"]
    latest = sorted(plans, key=lambda one: (one.finished_on or date.min, one.id), reverse=True)
    told = [one for one in latest if one.took]
    return FinishedPage(
        summary=_summary(len(latest), len(told)),
        rows=tuple(_row(one, book, shown) for one in latest),
        yarns=with_none("the same yarn", names_by_id(book.yarns)),
    )


def _summary(finished: int, told: int) -> str:
    if not finished:
        return "No garment is finished yet."
    lead = f"{counted(finished, 'garment').capitalize()} finished"
    if not told:
        return f"{lead}. Weigh what is left of the next one, and it teaches the one after it."
    return f"{lead}; of {number_word(told)} it is known what each part took."


def _row(plan: Plan, book: Book, shown: Shown) -> FinishedRow:
    return FinishedRow(
        plan_id=plan.id,
        name=plan.name,
        url=f"/garments/{plan.id}",
        person=book.person[plan.person_id].name if plan.person_id else "",
        day=shown.day(plan.finished_on) if plan.finished_on else "",
        said=done_sentence(plan, book, shown).rest.strip(),
        taken=taken(compared(book, plan.id), plan, book, shown),
        photos=photos_shown(photos_of(book.photos, "garment", plan.id)[:PHOTOS], plan.name, shown),
        left=left_overs(book, plan.id, shown),
        drawn=bool(book.parts_of.get(plan.id)),
        notes=tuple(plan.notes.splitlines()),
    )


def left_overs(book: Book, plan_id: str, shown: Shown) -> tuple[LeftOver, ...]:
    """What of a garment's balls is still on the shelf."""
    used = [one.holding_id for one in knit_into(book, plan_id) if one.is_yarn]
    own = [one.id for one in book.holdings if one.plan_id == plan_id and one.kind == "left-over"]
    holdings = (book.holding[one] for one in dict.fromkeys((*used, *own)))
    held = book.balances
    return tuple(
        LeftOver(one.code, f"/skeins/{one.id}", shown.at_least_mass(held[one.id].mg / 1000))
        for one in holdings
        if one.kind in YARN_KINDS and one.put_away is None and held[one.id].mg > 0
    )
