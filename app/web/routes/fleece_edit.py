"""A fleece is added, or what is written of it is changed."""

from datetime import date

from fastapi import APIRouter, Request, Response

from app.web.fleece_shown import as_opened, fleece_or_missing
from app.web.forms.fleece import (
    empty_fleece,
    filled_fleece,
    read_fleece,
    read_keeping,
    read_new_fleece,
)
from app.web.forms.reader import Posted, Reader
from app.web.pages.fleece_form import fleece_form_page
from app.web.session import READS, ReadingSession, WritingSession
from app.web.templating import after_save, render
from app.work.fleece_add import add_fleece
from app.work.fleece_change import change_fleece
from app.work.reckoning import current
from app.work.refusal import Refusal
from app.work.settings_read import settings_now

router = APIRouter()

FORM = "pages/fleeces/form.html"


@router.get("/fleeces/new", dependencies=[READS])
def ask_new(request: Request) -> Response:
    return render(request, FORM, fleece_form_page(empty_fleece(date.today())))


@router.post("/fleeces/new")
def add(request: Request, session: WritingSession, posted: Posted) -> Response:
    reader = Reader(posted, settings_now(session))
    new = read_new_fleece(reader, date.today())
    try:
        event = add_fleece(session, new) if reader.ok else None
    except Refusal as refusal:
        reader.refuse(refusal.field, refusal.message)
    if not reader.ok or event is None:
        return render(request, FORM, fleece_form_page(reader.filled()), status=422)
    message = f"{new.fleece.name} is on the shelf."
    return after_save(request, f"/fleeces/{new.fleece.id}", message, undo=event.seq)


@router.get("/fleeces/{fleece_id}/change")
def ask_change(request: Request, session: ReadingSession, fleece_id: str) -> Response:
    known = current(session)
    found = fleece_or_missing(known, fleece_id)
    form = filled_fleece(found.fleece, found.holding, known.book.settings)
    return render(request, FORM, fleece_form_page(form, fleece_id, found.fleece.name))


@router.post("/fleeces/{fleece_id}/change")
def change(request: Request, session: WritingSession, posted: Posted, fleece_id: str) -> Response:
    known = current(session)
    found = fleece_or_missing(known, fleece_id)
    reader = Reader(posted, known.book.settings)
    as_opened(found, reader.stamp)
    fleece, kept = read_fleece(reader, found.fleece), read_keeping(reader, found.holding)
    try:
        if reader.ok:
            change_fleece(session, fleece, kept)
    except Refusal as refusal:
        reader.refuse(refusal.field, refusal.message)
    if not reader.ok:
        page = fleece_form_page(reader.filled(), fleece_id, found.fleece.name)
        return render(request, FORM, page, status=422)
    return after_save(request, f"/fleeces/{fleece_id}", f"{fleece.name} is changed.")
