"""Today: the first page."""

from datetime import date

from fastapi import APIRouter, Request, Response

from app.web.pages.today import today_page
from app.web.session import ReadingSession
from app.web.templating import render, shown_in
from app.work.reckoning import current

router = APIRouter()


@router.get("/")
def show(request: Request, session: ReadingSession) -> Response:
    known = current(session)
    shown = shown_in(known.book.settings)
    page = today_page(known.book, known.reckoning, shown, date.today())
    return render(request, "pages/today.html", page)
