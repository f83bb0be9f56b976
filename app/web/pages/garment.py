"""The page of one garment plan: the answer, the wool for it, the skeins in their places."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from app.book.book import Book
from app.book.plan import Part, Plan
from app.book.stamp import stamp
from app.book.words import OPEN_STATES
from app.planning.answers import GroupAnswer, Held, PartAnswer, PlanAnswer, Remark, Taken
from app.planning.knitting.compared import compared
from app.planning.picture import picture
from app.planning.places import in_round
from app.web.forms.filled import Filled
from app.web.forms.reader import Reader
from app.web.pages.answer import Sentence, answer_sentence, done_sentence, listed, yarn_name
from app.web.pages.budget_bar import Bar, budget_bar
from app.web.pages.design_said import Designed, designed
from app.web.pages.finishing import PlannedTaken, taken
from app.web.pages.garment_choice import Choices, choices
from app.web.pages.garment_gauge import GaugeLine, gauge_lines
from app.web.pages.photos import PhotoShown, photos_shown
from app.web.pages.picture import drawing
from app.web.pages.picture_ink import Drawing
from app.web.pages.small_sums import SumsSaid, sums_asked
from app.web.pages.wool_of import WoolOf, wool_of_plan
from app.web.shown import Shown
from app.work.photo_find import photos_of
from app.work.plan_used import KnitIn, knit_into
from app.work.promise_free import NotFree, available_mm
from app.work.reckoning import Known
from app.work.undo_records import Change


@dataclass(frozen=True, slots=True)
class YarnShown:
    """A yarn by its name and colour; no `url` where it is still to be chosen."""

    name: str
    colour: str
    url: str


@dataclass(frozen=True, slots=True)
class SkeinRow:
    """A skein in its place; `most_mm` is the most this promise could be, `lacking_m` what the shelf
    no longer holds of it."""

    taken: Taken
    yarn: YarnShown
    mm: int
    most_mm: int
    lacking_m: float
    stamp: str


@dataclass(frozen=True, slots=True)
class PartRow:
    """A part with its answer; `rows` is what its rows are called, `have_m` is knitted in or
    promised."""

    part: Part
    rows: str
    answer: PartAnswer
    yarn: YarnShown
    bar: Bar
    have_m: float
    skeins: tuple[SkeinRow, ...]
    stamp: str


@dataclass(frozen=True, slots=True)
class GroupRow:
    """Parts that draw on the same yarn, with their own odds."""

    yarn: YarnShown
    parts: tuple[str, ...]
    answer: GroupAnswer


@dataclass(frozen=True, slots=True)
class Place:
    """Where yarn that was asked for is promised instead."""

    plan: str
    url: str
    m: float


@dataclass(frozen=True, slots=True)
class Trouble:
    """A refused change: the `form` it was typed in, with what was typed and the messages beside
    the fields, and where yarn that was asked for is promised instead.

    `where` is the id of the part or promise whose form it was.
    """

    where: str
    form: Filled
    places: tuple[Place, ...] = ()


@dataclass(frozen=True, slots=True)
class GarmentPage:
    """`wanting` is False once the plan wants no more yarn; `reckoned` may then be None.

    `remarks` go with the names of their parts; `proposed` counts skeins not yet kept.
    """

    plan: Plan
    stamp: str
    person: str
    answer: Sentence
    wanting: bool
    reckoned: PlanAnswer | None
    parts: tuple[PartRow, ...]
    groups: tuple[GroupRow, ...]
    remarks: tuple[tuple[str, Remark], ...]
    gauges: tuple[GaugeLine, ...]
    knit_in: tuple[KnitIn, ...]
    proposed: int
    choices: Choices | None
    trouble: Trouble | None
    last: Change | None
    today: date
    drawn: Drawing
    designed: Designed | None
    sums: SumsSaid | None
    wool: WoolOf | None
    photos: tuple[PhotoShown, ...]
    taken: PlannedTaken | None


def garment_page(
    known: Known,
    shown: Shown,
    plan_id: str,
    today: date,
    put: str | None = None,
    trouble: Trouble | None = None,
    last: Change | None = None,
) -> GarmentPage:
    """The page of a plan; `put` is the part whose choice of skeins is open, `last` the change that
    can be undone. KeyError if gone."""
    book, plan = known.book, known.book.plan[plan_id]
    reckoned = next((one for one in known.reckoning.plans if one.plan_id == plan_id), None)
    parts = reckoned.parts if reckoned else ()
    open_part = next((one for one in parts if one.part_id == put), None)
    promises = book.promises_of.get(plan_id, [])
    return GarmentPage(
        plan=plan,
        stamp=stamp(plan),
        person=book.person[plan.person_id].name if plan.person_id else "",
        answer=_said(plan, reckoned, book, shown),
        wanting=plan.state in OPEN_STATES,
        reckoned=reckoned,
        parts=tuple(_part_row(one, known) for one in parts),
        groups=tuple(_group_row(one, book) for one in (reckoned.groups if reckoned else ())),
        remarks=_remarks(parts),
        gauges=gauge_lines(plan, book, shown),
        knit_in=knit_into(book, plan_id),
        proposed=sum(1 for one in promises if one.state == "proposed"),
        choices=choices(known, plan_id, open_part, _chosen(trouble)) if open_part else None,
        trouble=trouble,
        last=last,
        today=today,
        drawn=drawing(picture(book, known.reckoning, plan_id), shown),
        designed=designed(plan, book.parts_of.get(plan.id, []), shown),
        wool=wool_of_plan(book, plan_id, shown),
        sums=sums_asked(book, plan, Reader({}, book.settings), shown),
        photos=photos_shown(photos_of(book.photos, "garment", plan_id), plan.name, shown),
        taken=taken(compared(book, plan_id), plan, book, shown),
    )


def _chosen(trouble: Trouble | None) -> str:
    return trouble.form.values.get("holding_id", "") if trouble else ""


def _said(plan: Plan, reckoned: PlanAnswer | None, book: Book, shown: Shown) -> Sentence:
    if reckoned is not None and plan.state in OPEN_STATES:
        return answer_sentence(reckoned, book, shown)
    return done_sentence(plan, book, shown)


def _remarks(parts: tuple[PartAnswer, ...]) -> tuple[tuple[str, Remark], ...]:
    """Each remark once, with the names of the parts it is about."""
    about: dict[Remark, list[str]] = {}
    for part in parts:
        for remark in part.remarks:
            about.setdefault(remark, []).append(part.name)
    return tuple((listed(names), remark) for remark, names in about.items())


def places(held: Iterable[Held], book: Book) -> tuple[Place, ...]:
    """Where yarn is promised or kept in reserve, one place for each plan, the most first."""
    metres: dict[str, float] = {}
    for one in held:
        metres[one.plan_id] = metres.get(one.plan_id, 0.0) + one.m
    most_first = sorted(metres.items(), key=lambda item: -item[1])
    return tuple(Place(book.plan[one].name, f"/garments/{one}", m) for one, m in most_first)


def beyond_said(reason: NotFree, book: Book, shown: Shown) -> str:
    """Why no more of a skein can be promised, and which parts of the garment have the rest."""
    free = shown.at_least_length(reason.available_mm / 1000)
    said = f"{book.holding[reason.holding_id].code} has {free} for this garment, no more."
    own = [
        f"{book.part[one.part_id].name} ({shown.length(one.m)})"
        for one in reason.own
        if one.part_id
    ]
    if own:
        return f"{said} Promised to its parts already: {listed(own)}."
    return said if reason.elsewhere else f"{said} That is all it holds."


def yarn_shown(yarn_id: str | None, book: Book) -> YarnShown:
    """A yarn as it stands in a table."""
    if yarn_id is None:
        return YarnShown("to be chosen", "", "")
    return YarnShown(yarn_name(yarn_id, book), book.yarn[yarn_id].colour, f"/yarns/{yarn_id}")


def _part_row(answer: PartAnswer, known: Known) -> PartRow:
    part = known.book.part[answer.part_id]
    return PartRow(
        part=part,
        rows="rounds" if in_round(part) else "rows",
        answer=answer,
        yarn=yarn_shown(answer.yarn_id, known.book),
        bar=budget_bar(answer),
        have_m=answer.used_m + answer.promised_m,
        skeins=tuple(_skein_row(one, part.plan_id, known) for one in answer.skeins),
        stamp=stamp(part),
    )


def _skein_row(taken: Taken, plan_id: str, known: Known) -> SkeinRow:
    promise = next(one for one in known.book.promises if one.id == taken.promise_id)
    line = known.reckoning.shelf.get(taken.holding_id)
    room = available_mm(line, plan_id) if line else 0
    yarn = yarn_shown(taken.yarn_id, known.book)
    lost = (one.m for one in known.reckoning.uncovered if one.promise_id == promise.id)
    return SkeinRow(taken, yarn, promise.mm, promise.mm + room, sum(lost), stamp(promise))


def _group_row(answer: GroupAnswer, book: Book) -> GroupRow:
    names = tuple(book.part[one].name for one in answer.part_ids)
    return GroupRow(yarn_shown(answer.yarn_id, book), names, answer)
