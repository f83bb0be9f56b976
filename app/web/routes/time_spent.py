"""Hours and evenings of the work list, time spent, and the calendar."""

from datetime import date

from fastapi import APIRouter, Request, Response
from sqlmodel import Session

from app.planning.time_days import days
from app.web.errors import Missing
from app.web.forms.filled import Filled
from app.web.forms.options import names_by_id
from app.web.forms.reader import Posted
from app.web.forms.stint import read_stint
from app.web.pages.time_needed import TimePage, time_page
from app.web.session import ReadingSession, WritingSession
from app.web.templating import after_save, render, shown_in
from app.work.reckoning import current
from app.work.stint_calendar import calendar_of
from app.work.stint_save import note_stint, remove_stint

router = APIRouter(prefix="/work-list")

PAGE = "pages/work_list/time.html"
URL = "/work-list/time"


@router.get("/time")
def show(request: Request, session: ReadingSession) -> Response:
    return render(request, PAGE, _page(session))


@router.get("/time.ics")
def calendar(session: ReadingSession) -> Response:
    known, today = current(session), date.today()
    body = calendar_of(days(known.book, known.reckoning, today), today)
    headers = {"content-disposition": 'attachment; filename="tallyhank.ics"'}
    return Response(body, media_type="text/calendar; charset=utf-8", headers=headers)


@router.post("/time")
def note(request: Request, session: WritingSession, posted: Posted) -> Response:
    book = current(session).book
    reader, stint = read_stint(posted, book.settings, names_by_id(book.yarns))
    if not reader.ok:
        return render(request, PAGE, _page(session, reader.filled()), status=422)
    note_stint(session, stint)
    return after_save(request, URL, "The time is noted.")


@router.post("/time/{stint_id}/remove")
def take_out(request: Request, session: WritingSession, stint_id: str) -> Response:
    try:
        remove_stint(session, stint_id)
    except KeyError:
        raise Missing("This note of time") from None
    return after_save(request, URL, "The note is taken out.")


def _page(session: Session, form: Filled | None = None) -> TimePage:
    known = current(session)
    shown = shown_in(known.book.settings)
    return time_page(known.book, known.reckoning, shown, date.today(), form)
