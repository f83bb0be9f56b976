"""The finished garments, and one of them made again."""

from fastapi import APIRouter, Request, Response

from app.web.forms.options import names_by_id
from app.web.forms.reader import Posted, Reader
from app.web.garment_shown import plan_or_missing
from app.web.pages.finished import finished_page
from app.web.session import ReadingSession, WritingSession
from app.web.templating import after_save, render, shown_in
from app.work.plan_again import make_again
from app.work.reckoning import current
from app.work.undo_records import remember

router = APIRouter()

PAGE = "pages/garments/finished.html"


@router.get("/garments/finished")
def show(request: Request, session: ReadingSession) -> Response:
    book = current(session).book
    return render(request, PAGE, finished_page(book, shown_in(book.settings)))


@router.post("/garments/{plan_id}/again")
def make(request: Request, session: WritingSession, posted: Posted, plan_id: str) -> Response:
    plan, was = plan_or_missing(session, plan_id), current(session).book
    reader = Reader(posted, was.settings)
    yarn_id = reader.choice("yarn_id", ("", *names_by_id(was.yarns)), default="")
    if not reader.ok:
        page = finished_page(was, shown_in(was.settings))
        return render(request, PAGE, page, status=422)
    made = make_again(session, plan, yarn_id or None)
    message = f"{made.name} is planned, with what your garments taught. Now promise it skeins."
    return after_save(request, f"/garments/{made.id}", message, remember(session, was, message))
