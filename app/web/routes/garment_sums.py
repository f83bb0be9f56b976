"""The small sums of a garment, worked from its own numbers."""

from fastapi import APIRouter, Request, Response

from app.web.forms.reader import Reader
from app.web.garment_shown import plan_or_missing
from app.web.pages.small_sums import SumsPage, sums_asked
from app.web.session import ReadingSession
from app.web.templating import render, shown_in
from app.work.reckoning import current

router = APIRouter(prefix="/garments/{plan_id}/sums")


@router.get("")
def show(request: Request, session: ReadingSession, plan_id: str) -> Response:
    plan = plan_or_missing(session, plan_id)
    book = current(session).book
    reader = Reader(request.query_params, book.settings)
    sums = sums_asked(book, plan, reader, shown_in(book.settings))
    status = 422 if sums and sums.form.errors else 200
    return render(request, "pages/garments/sums.html", SumsPage(plan, sums), status, block="sums")
