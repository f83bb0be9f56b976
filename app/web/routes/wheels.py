"""Wheels and spindles, kept under Settings."""

from fastapi import APIRouter, Request, Response
from sqlmodel import Session

from app.book.ids import new_id
from app.book.stamp import stamp
from app.book.wheel import Wheel
from app.web.errors import Missing, Stale
from app.web.forms.reader import Posted, Reader
from app.web.forms.wheel import filled_wheel, read_wheel
from app.web.pages.wheels import wheel_form_page, wheels_page
from app.web.session import ReadingSession, WritingSession, settings_of_request
from app.web.templating import after_save, render, shown_in
from app.work.refusal import Refusal
from app.work.settings_read import settings_now
from app.work.wheel_save import save_wheel, wheel, wheels

router = APIRouter()

LIST = "/settings/wheels"
FORM = "pages/settings/wheel.html"


@router.get(LIST)
def show(request: Request, session: ReadingSession) -> Response:
    page = wheels_page(wheels(session), shown_in(settings_of_request(request)))
    return render(request, "pages/settings/wheels.html", page)


@router.get("/settings/wheels/new")
def ask_new(request: Request, session: ReadingSession) -> Response:
    form = filled_wheel(None, settings_now(session))
    return render(request, FORM, wheel_form_page(form, None))


@router.post("/settings/wheels/new")
def add(request: Request, session: WritingSession, posted: Posted) -> Response:
    return _saved(request, session, posted, None)


@router.get("/settings/wheels/{wheel_id}/change")
def ask_change(request: Request, session: ReadingSession, wheel_id: str) -> Response:
    old = _or_missing(session, wheel_id)
    form = filled_wheel(old, settings_now(session))
    return render(request, FORM, wheel_form_page(form, old))


@router.post("/settings/wheels/{wheel_id}/change")
def change(request: Request, session: WritingSession, posted: Posted, wheel_id: str) -> Response:
    old = _or_missing(session, wheel_id)
    if posted.get("stamp") != stamp(old):
        raise Stale(f"What is written of {old.name}", LIST)
    return _saved(request, session, posted, old)


def _saved(request: Request, session: Session, posted: Posted, old: Wheel | None) -> Response:
    reader = Reader(posted, settings_now(session))
    wanted = read_wheel(reader, old or Wheel(id=new_id(), name=""))
    try:
        if reader.ok:
            save_wheel(session, wanted)
    except Refusal as refusal:
        reader.refuse(refusal.field, refusal.message)
    if not reader.ok:
        page = wheel_form_page(reader.filled(put_away=_ticked(reader)), old)
        return render(request, FORM, page, status=422)
    return after_save(request, LIST, f"{wanted.name} is written down.")


def _ticked(reader: Reader) -> str:
    return "1" if reader.flag("put_away") else ""


def _or_missing(session: Session, wheel_id: str) -> Wheel:
    found = wheel(session, wheel_id)
    if found is None:
        raise Missing("This wheel")
    return found
