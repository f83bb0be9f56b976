"""How to spin a yarn: its plan, its targets, the sheet for the wheel, and more like it."""

from fastapi import APIRouter, Request, Response
from sqlmodel import Session

from app.book.stamp import stamp
from app.book.yarn import Yarn
from app.store.records import get
from app.web.errors import Missing, Stale
from app.web.forms.reader import Posted, Reader
from app.web.forms.spinning import MOST_MM, read_spinning, wheel_options
from app.web.pages.spinning import spinning_form_page, spinning_page
from app.web.session import ReadingSession, WritingSession
from app.web.templating import after_save, render
from app.work.reckoning import current
from app.work.yarn_spinning import more_like, save_targets

router = APIRouter(prefix="/yarns/{yarn_id}")

PAGE = "pages/yarns/spinning.html"
FORM = "pages/yarns/spinning_form.html"
SHEET = "print/spinning.html"


@router.get("/spinning")
def show(request: Request, session: ReadingSession, yarn_id: str) -> Response:
    known, yarn = current(session), _yarn(session, yarn_id)
    return render(request, PAGE, spinning_page(known.book, known.reckoning, yarn))


@router.get("/spinning/print")
def print_sheet(request: Request, session: ReadingSession, yarn_id: str) -> Response:
    known, yarn = current(session), _yarn(session, yarn_id)
    return render(request, SHEET, spinning_page(known.book, known.reckoning, yarn))


@router.get("/spinning/change")
def ask_change(request: Request, session: ReadingSession, yarn_id: str) -> Response:
    yarn = _yarn(session, yarn_id)
    return render(request, FORM, spinning_form_page(current(session).book, yarn))


@router.post("/spinning/change")
def change(request: Request, session: WritingSession, posted: Posted, yarn_id: str) -> Response:
    book, old, url = current(session).book, _yarn(session, yarn_id), f"/yarns/{yarn_id}/spinning"
    reader = Reader(posted, book.settings)
    if reader.stamp != stamp(old):
        raise Stale(f"How {old.name} is to be spun", url)
    wanted = read_spinning(reader, old, wheel_options(book))
    if not reader.ok:
        filled = reader.filled(chained="1" if reader.flag("chained") else "")
        return render(request, FORM, spinning_form_page(book, old, filled), status=422)
    save_targets(session, wanted)
    return after_save(request, url, f"How {old.name} is to be spun is kept.")


@router.post("/like")
def like(request: Request, session: WritingSession, posted: Posted, yarn_id: str) -> Response:
    known, yarn = current(session), _yarn(session, yarn_id)
    reader = Reader(posted, known.book.settings)
    wanted = reader.length("wanted", required=True, least=1000, most=MOST_MM)
    if wanted is None:
        page = spinning_page(known.book, known.reckoning, yarn, reader.filled())
        return render(request, PAGE, page, status=422)
    made = more_like(session, known.book, yarn, wanted)
    said = f"{made.name} is written down, with the targets of {yarn.name}."
    return after_save(request, f"/yarns/{made.id}/spinning", said)


def _yarn(session: Session, yarn_id: str) -> Yarn:
    yarn = get(session, Yarn, yarn_id)
    if yarn is None:
        raise Missing("This yarn")
    return yarn
