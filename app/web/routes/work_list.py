"""The work list: see it, add and tick lines of her own, print it, take it as a table."""

from datetime import date

from fastapi import APIRouter, Request, Response
from sqlmodel import Session
from starlette.datastructures import FormData

from app.web.errors import Missing
from app.web.forms.errand import read_errand
from app.web.forms.filled import Filled
from app.web.forms.options import names_by_id
from app.web.forms.reader import Posted
from app.web.pages.work_list import WorkListPage, work_list_page
from app.web.session import ReadingSession, WritingSession
from app.web.templating import after_save, render
from app.work.errand_list import add_errand, remove_errand, tick_errand
from app.work.reckoning import current
from app.work.settings_read import settings_now
from app.work.undo_records import Change, last_change, remember
from app.work.work_list_csv import work_list_csv

router = APIRouter()

PAGE = "pages/work_list/work_list.html"
SHEET = "print/work_list.html"


@router.get("/work-list")
def show(request: Request, session: ReadingSession) -> Response:
    return render(request, PAGE, _page(session, Filled()))


@router.get("/work-list/print")
def print_sheet(request: Request, session: ReadingSession) -> Response:
    return render(request, SHEET, _page(session, Filled()))


@router.get("/work-list.csv")
def table(session: ReadingSession) -> Response:
    text = work_list_csv(current(session).reckoning.work)
    name = f"work-list-{date.today().isoformat()}.csv"
    headers = {"content-disposition": f'attachment; filename="{name}"'}
    return Response(text, media_type="text/csv; charset=utf-8", headers=headers)


@router.post("/work-list")
def add(request: Request, session: WritingSession, posted: Posted) -> Response:
    plans = names_by_id(current(session).book.plans)
    reader, errand = read_errand(posted, settings_now(session), plans)
    if not reader.ok:
        return render(request, PAGE, _page(session, reader.filled()), status=422)
    add_errand(session, errand)
    return after_save(request, "/work-list", "Added to the list.")


@router.post("/work-list/{errand_id}/tick")
def tick(request: Request, session: WritingSession, posted: Posted, errand_id: str) -> Response:
    return _ticked(request, session, posted, errand_id, date.today())


@router.post("/work-list/{errand_id}/untick")
def untick(request: Request, session: WritingSession, posted: Posted, errand_id: str) -> Response:
    return _ticked(request, session, posted, errand_id, None)


@router.post("/work-list/{errand_id}/remove")
def take_out(request: Request, session: WritingSession, errand_id: str) -> Response:
    was = current(session).book
    try:
        errand = remove_errand(session, errand_id)
    except KeyError:
        raise Missing("This line") from None
    message = f"Taken out: {errand.text}."
    return after_save(request, "/work-list", message, remember(session, was, message))


def _ticked(
    request: Request, session: Session, posted: FormData, errand_id: str, day: date | None
) -> Response:
    try:
        tick_errand(session, errand_id, day)
    except KeyError:
        raise Missing("This line") from None
    back = "/" if posted.get("back") == "/" else "/work-list"
    return after_save(request, back, "Ticked." if day else "Back on the list.")


def _page(session: Session, form: Filled) -> WorkListPage:
    known = current(session)
    last = last_change(session, known.book, Change.of_errands)
    return work_list_page(known.reckoning, names_by_id(known.book.plans), date.today(), form, last)
