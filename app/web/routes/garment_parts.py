"""The parts of a garment: add, change, put in order, take out."""

from fastapi import APIRouter, Request, Response

from app.book.plan import Part
from app.book.stamp import stamp
from app.store.records import load_book
from app.web.forms.gauge_swatch import swatches_offered
from app.web.forms.options import names_by_id
from app.web.forms.part import part_values, read_part
from app.web.forms.reader import Posted
from app.web.garment_shown import (
    as_opened,
    at_part,
    back_to_garment,
    part_or_missing,
    plan_or_missing,
    said_with,
)
from app.web.pages.garment_form import part_form_page
from app.web.pages.part_remove import part_remove_page
from app.web.pages.parted_said import no_longer_meet
from app.web.session import ReadingSession, WritingSession
from app.web.templating import after_save, render
from app.work.part_save import add_part, change_part, match_part, move_part, remove_part
from app.work.plan_effect import save_and_tell
from app.work.undo_records import remember

router = APIRouter(prefix="/garments/{plan_id}/parts")

FORM = "pages/garments/part_form.html"
ASK = "pages/garments/part_remove.html"


@router.get("/new")
def ask_new(request: Request, session: ReadingSession, plan_id: str) -> Response:
    plan = plan_or_missing(session, plan_id)
    return render(request, FORM, part_form_page(load_book(session), plan, None))


@router.post("/new")
def add(request: Request, session: WritingSession, posted: Posted, plan_id: str) -> Response:
    plan = plan_or_missing(session, plan_id)
    book = load_book(session)
    yarns, offered = names_by_id(book.yarns), swatches_offered(book, None)
    reader, part = read_part(posted, book.settings, plan, yarns, offered)
    if not reader.ok:
        page = part_form_page(book, plan, None, reader.filled())
        return render(request, FORM, page, status=422)
    _, effect = save_and_tell(session, plan_id, lambda: add_part(session, part))
    message = said_with(f"{part.name} is added to {plan.name}.", effect, book)
    undo = remember(session, book, message)
    return after_save(request, f"/garments/{plan_id}", message, undo)


@router.get("/{part_id}/change")
def ask_change(request: Request, session: ReadingSession, plan_id: str, part_id: str) -> Response:
    plan, part = plan_or_missing(session, plan_id), part_or_missing(session, plan_id, part_id)
    return render(request, FORM, part_form_page(load_book(session), plan, part))


@router.post("/{part_id}/change")
def change(
    request: Request, session: WritingSession, posted: Posted, plan_id: str, part_id: str
) -> Response:
    plan, old = plan_or_missing(session, plan_id), part_or_missing(session, plan_id, part_id)
    book = load_book(session)
    yarns, offered = names_by_id(book.yarns), swatches_offered(book, old)
    reader, part = read_part(posted, book.settings, plan, yarns, offered, old)
    if reader.stamp != stamp(old):
        words = {**yarns, **names_by_id(offered.values())}
        form = reader.over(part_values(old, book.settings), stamp(old), words)
        return render(request, FORM, part_form_page(book, plan, old, form), status=409)
    if not reader.ok:
        page = part_form_page(book, plan, old, reader.filled())
        return render(request, FORM, page, status=422)
    freed, effect = save_and_tell(session, plan_id, lambda: change_part(session, part))
    also = " Yarn that is no longer knit in it is free again." if freed else ""
    also += no_longer_meet(plan, part, load_book(session))
    message = said_with(f"{part.name} {_are(part)} changed.{also}", effect, book)
    undo = remember(session, book, message)
    return after_save(request, f"/garments/{plan_id}", message, undo)


@router.post("/{part_id}/match")
def match(
    request: Request, session: WritingSession, posted: Posted, plan_id: str, part_id: str
) -> Response:
    plan, part = plan_or_missing(session, plan_id), part_or_missing(session, plan_id, part_id)
    as_opened(part, str(posted.get("stamp", "")), part.name, plan_id)
    book = load_book(session)
    done, effect = save_and_tell(session, plan_id, lambda: match_part(session, plan, part))
    if done is None:
        return back_to_garment(plan_id, f"{part.name} is as it was: it meets what it is knit to.")
    message = said_with(f"{part.name} {_are(part)} drawn to match.", effect, book)
    return after_save(request, f"/garments/{plan_id}", message, remember(session, book, message))


@router.post("/{part_id}/move")
def move(session: WritingSession, posted: Posted, plan_id: str, part_id: str) -> Response:
    part = part_or_missing(session, plan_id, part_id)
    where = "later" if posted.get("to") == "later" else "earlier"
    if move_part(session, part, where == "earlier"):
        at = at_part(part_id, choosing=False)
        return back_to_garment(plan_id, f"{part.name} stands {where} now.", at)
    return back_to_garment(plan_id, f"{part.name} cannot stand {where} than it does.")


@router.get("/{part_id}/remove")
def ask_remove(request: Request, session: ReadingSession, plan_id: str, part_id: str) -> Response:
    plan, part = plan_or_missing(session, plan_id), part_or_missing(session, plan_id, part_id)
    return render(request, ASK, part_remove_page(load_book(session), plan, part))


@router.post("/{part_id}/remove")
def remove(
    request: Request, session: WritingSession, posted: Posted, plan_id: str, part_id: str
) -> Response:
    part = part_or_missing(session, plan_id, part_id)
    as_opened(part, str(posted.get("stamp", "")), part.name, plan_id)
    was = load_book(session)
    freed, effect = save_and_tell(session, plan_id, lambda: remove_part(session, part))
    also = " What was promised to it is free again." if freed else ""
    message = said_with(f"{part.name} {_are(part)} taken out.{also}", effect, was)
    undo = remember(session, was, message)
    return after_save(request, f"/garments/{plan_id}", message, undo)


def _are(part: Part) -> str:
    return "are" if part.copies > 1 else "is"
