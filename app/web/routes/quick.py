"""The quick reckoning: a question is an address; nothing is saved until it is kept as a plan."""

from fastapi import APIRouter, Request, Response

from app.planning.quick import QuickAnswer
from app.web.forms.quick import read_question
from app.web.forms.reader import Posted, Reader
from app.web.pages.quick import quick_form, quick_page
from app.web.session import ReadingSession, WritingSession
from app.web.templating import after_save, render, shown_in
from app.work.quick_ask import ask, keep
from app.work.reckoning import Known, current
from app.work.refusal import Refusal

router = APIRouter()

PAGE = "pages/quick/quick.html"


@router.get("/quick")
def show(request: Request, session: ReadingSession) -> Response:
    known = current(session)
    if not request.query_params:
        return _page(request, Reader({}, known.book.settings), known, None, 200)
    reader = Reader(request.query_params, known.book.settings)
    answer = _answer(reader, known)
    return _page(request, reader, known, answer, 200 if answer else 422)


@router.post("/quick/keep")
def keep_it(request: Request, posted: Posted, session: WritingSession) -> Response:
    known = current(session)
    reader = Reader(posted, known.book.settings)
    answer = _answer(reader, known)
    if answer is None:
        return _page(request, reader, known, None, 422)
    plan = keep(session, answer, reader.typed("person") or None, reader.typed("yarn") or None)
    return after_save(request, f"/garments/{plan.id}", _kept(plan.name))


def _kept(name: str) -> str:
    return f"{name} is kept as a plan. Enter its yarn as skeins, if they are not on the shelf yet."


def _answer(reader: Reader, known: Known) -> QuickAnswer | None:
    question = read_question(reader, known)
    if question is None:
        return None
    try:
        return ask(question, known.book.settings)
    except Refusal as refusal:
        reader.refuse(refusal.field, str(refusal))
        return None


def _page(
    request: Request, reader: Reader, known: Known, answer: QuickAnswer | None, status: int
) -> Response:
    filled = reader.filled() if reader.values else quick_form(known.book).form
    page = quick_page(known.book, filled, answer, shown_in(known.book.settings))
    return render(request, PAGE, page, status, block="answer")
