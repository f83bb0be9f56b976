"""The parts of a garment: add, change, put in order, take out."""

from fastapi import APIRouter, Request, Response

from app.store.records import load_book
from app.web.forms.gauge_swatch import swatches_offered
from app.web.forms.options import names_by_id
from app.web.forms.part import read_part
from app.web.forms.reader import Posted
from app.web.garment_shown import (
    as_opened,
    back_to_garment,
    part_or_missing,
    plan_or_missing,
    said_with,
)
from app.web.pages.garment_form import part_form_page
from app.web.pages.part_remove import part_remove_page
from app.web.session import ReadingSession, WritingSession
from app.web.templating import after_save, render
from app.work.part_save import add_part, change_part, move_part, remove_part
from app.work.plan_effect import save_and_tell

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
    message = f"{part.name} is added to {plan.name}."
    return after_save(request, f"/garments/{plan_id}", said_with(message, effect, book))


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
    as_opened(old, reader.stamp, f"{old.name} of {plan.name}", plan_id)
    if not reader.ok:
        page = part_form_page(book, plan, old, reader.filled())
        return render(request, FORM, page, status=422)
    freed, effect = save_and_tell(session, plan_id, lambda: change_part(session, part))
    also = " Yarn that is no longer knit in it is free again." if freed else ""
    message = said_with(f"{part.name} is changed.{also}", effect, book)
    return after_save(request, f"/garments/{plan_id}", message)


@router.post("/{part_id}/move")
def move(session: WritingSession, posted: Posted, plan_id: str, part_id: str) -> Response:
    part = part_or_missing(session, plan_id, part_id)
    where = "later" if posted.get("to") == "later" else "earlier"
    if move_part(session, part, where == "earlier"):
        return back_to_garment(plan_id, f"{part.name} stands {where} now.")
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
    freed, effect = save_and_tell(session, plan_id, lambda: remove_part(session, part))
    also = " What was promised to it is free again." if freed else ""
    message = said_with(f"{part.name} is taken out.{also}", effect, load_book(session))
    return after_save(request, f"/garments/{plan_id}", message)
