"""Yarns that take turns in a part: asked for, kept, ended, knit from, printed."""

from collections.abc import Mapping
from datetime import date

from fastapi import APIRouter, Request, Response

from app.book.book import Book
from app.book.plan import Part
from app.book.stamp import stamp
from app.planning.sequence import Asked, Turns, roles_of, take_turns
from app.planning.sequence_refused import Refused
from app.web.errors import Stale
from app.web.forms.filled import Filled
from app.web.forms.options import names_by_id
from app.web.forms.reader import Posted, Reader
from app.web.forms.sequence import read_turns, turns_values
from app.web.garment_shown import part_or_missing, said_with, wanting_plan
from app.web.pages.sequence import noun_of, sequence_page
from app.web.pages.sequence_knit import knit_page, knit_sheet
from app.web.pages.sequence_said import refused, said
from app.web.session import ReadingSession, WritingSession
from app.web.templating import after_save, render, shown_in
from app.work.plan_effect import save_and_tell
from app.work.reckoning import Known, current
from app.work.sequence_save import end_turns, keep_turns
from app.work.undo_records import remember

router = APIRouter(prefix="/garments/{plan_id}/parts/{part_id}/turns")

PAGE = "pages/garments/sequence.html"
KNIT = "pages/garments/sequence_knit.html"
SHEET = "print/sequence.html"


@router.get("")
def ask(request: Request, session: ReadingSession, plan_id: str, part_id: str) -> Response:
    plan, part = wanting_plan(session, plan_id), part_or_missing(session, plan_id, part_id)
    known = current(session)
    if "kind" not in request.query_params:
        values = turns_values(plan, part, known.book.settings)
        form = Filled(values, {}, _stamps(known.book, part))
        return _page(request, known, part, form)
    reader, asked, turns = _answer(known, part, dict(request.query_params))
    return _page(request, known, part, _again(reader, known.book, part), asked, turns)


@router.post("")
def keep(
    request: Request, session: WritingSession, posted: Posted, plan_id: str, part_id: str
) -> Response:
    wanting_plan(session, plan_id)
    part, known = part_or_missing(session, plan_id, part_id), current(session)
    reader, asked, turns = _answer(known, part, posted)
    if reader.stamp != _stamps(known.book, part):
        raise Stale(part.name, f"/garments/{plan_id}")
    if turns is None:
        return _page(request, known, part, reader.filled(), asked)
    _, does = save_and_tell(session, plan_id, lambda: keep_turns(session, turns.parts))
    told = said(turns, asked, noun_of(part), known.book, shown_in(known.book.settings))
    message = said_with(f"{part.name}: {told.lead}{told.rest}", does, known.book)
    undo = remember(session, known.book, message)
    return after_save(request, f"/garments/{plan_id}", message, undo)


@router.post("/end")
def end(
    request: Request, session: WritingSession, posted: Posted, plan_id: str, part_id: str
) -> Response:
    wanting_plan(session, plan_id)
    part, known = part_or_missing(session, plan_id, part_id), current(session)
    if posted.get("stamp") != _stamps(known.book, part):
        raise Stale(part.name, f"/garments/{plan_id}")
    freed, does = save_and_tell(session, plan_id, lambda: end_turns(session, part))
    also = " What was promised of the others is free again." if freed else ""
    message = said_with(f"{part.name} is in one yarn again.{also}", does, known.book)
    undo = remember(session, known.book, message)
    return after_save(request, f"/garments/{plan_id}", message, undo)


@router.get("/rows")
def rows(
    request: Request, session: ReadingSession, plan_id: str, part_id: str, at: str = "1"
) -> Response:
    part = part_or_missing(session, plan_id, part_id)
    row = int(at[:6]) if at.isascii() and at.isdecimal() else 1
    return render(request, KNIT, knit_page(current(session), part, row), block="strip")


@router.get("/print")
def paper(request: Request, session: ReadingSession, plan_id: str, part_id: str) -> Response:
    part, known = part_or_missing(session, plan_id, part_id), current(session)
    shown = shown_in(known.book.settings)
    return render(request, SHEET, knit_sheet(known, part, shown, date.today()))


def _answer(
    known: Known, part: Part, values: Mapping[str, object]
) -> tuple[Reader, Asked, Turns | None]:
    """What was asked as it was read, and its answer where there is one."""
    book = known.book
    later = _later(book, part)
    reader, asked = read_turns(values, book.settings, names_by_id(book.yarns), later)
    if not reader.ok:
        return reader, asked, None
    plan = book.plan[part.plan_id]
    try:
        parts = (part.id, *asked.over)
        return reader, asked, take_turns(book, known.reckoning, plan, parts, asked)
    except Refused as why:
        roles = roles_of(plan, part, asked.yarns)
        shown = shown_in(book.settings)
        reader.refuse(*refused(why, asked, roles, noun_of(part), book, shown))
        return reader, asked, None


def _page(
    request: Request,
    known: Known,
    part: Part,
    form: Filled,
    asked: Asked | None = None,
    turns: Turns | None = None,
) -> Response:
    shown, yarns = shown_in(known.book.settings), names_by_id(known.book.yarns)
    later = _later(known.book, part)
    page = sequence_page(known, part, form, yarns, later, shown, asked, turns)
    return render(request, PAGE, page, status=422 if form.errors else 200)


def _again(reader: Reader, book: Book, part: Part) -> Filled:
    """The form as it was asked, with the stamp of now."""
    return Filled(reader.values, dict(reader.errors), _stamps(book, part))


def _later(book: Book, part: Part) -> dict[str, str]:
    """The parts that are knit after a part, by id."""
    parts = book.parts_of.get(part.plan_id, [])
    return {one.id: one.name for one in parts if one.position > part.position}


def _stamps(book: Book, part: Part) -> str:
    """What a form of a part and those after it was opened on."""
    later = [book.part[one] for one in _later(book, part)]
    return "-".join(stamp(one) for one in (part, *later))
