"""A garment comes off the needles."""

from datetime import date

from fastapi import APIRouter, Request, Response

from app.book.errors import WoolBookError
from app.store.records import load_book
from app.web.forms.finishing import balls_of, blank_finish, read_finish
from app.web.forms.reader import Posted
from app.web.garment_shown import as_opened, back_to_garment, plan_or_missing, wanting_plan
from app.web.pages.finishing import finish_page
from app.web.session import ReadingSession, WritingSession
from app.web.templating import render, shown_in
from app.work.knit_finish import finish_knitting
from app.work.reckoning import current
from app.work.undo_records import remember

router = APIRouter(prefix="/garments/{plan_id}/needles/finish")

PAGE = "pages/garments/finish.html"


@router.get("")
def ask(request: Request, session: ReadingSession, plan_id: str) -> Response:
    plan, book = wanting_plan(session, plan_id), load_book(session)
    form = blank_finish(plan, book.settings, date.today())
    page = finish_page(book, plan, form, shown_in(book.settings))
    return render(request, PAGE, page)


@router.post("")
def finish(request: Request, session: WritingSession, posted: Posted, plan_id: str) -> Response:
    plan, was = plan_or_missing(session, plan_id), current(session).book
    as_opened(plan, str(posted.get("stamp", "")), f"The plan of {plan.name}", plan_id)
    reader, told = read_finish(posted, was.settings, balls_of(was, plan_id), date.today())
    if reader.ok:
        try:
            finish_knitting(session, plan, told)
        except WoolBookError as error:
            reader.refuse("day", str(error))
    if not reader.ok:
        page = finish_page(was, plan, reader.filled(), shown_in(was.settings))
        return render(request, PAGE, page, status=422)
    rest = "went into it" if told.all_used else "is free again"
    message = f"{plan.name} is finished. What was still promised {rest}."
    return back_to_garment(plan_id, message, "", remember(session, was, message))
