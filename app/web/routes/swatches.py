"""The swatches: all of them, one with what it tells, a new one, a change, put away, take over."""

from datetime import date

from fastapi import APIRouter, Request, Response
from sqlmodel import Session

from app.book.stamp import stamp
from app.book.swatch import Swatch
from app.store.records import get
from app.web.errors import Missing, Stale
from app.web.forms.options import names_by_id
from app.web.forms.reader import Posted
from app.web.forms.swatch import read_swatch
from app.web.forms.swatch_needle import read_stitches
from app.web.pages.swatch import swatch_page
from app.web.pages.swatches import new_swatch_page, swatch_form_page, swatches_page
from app.web.session import ReadingSession, WritingSession
from app.web.templating import after_save, render, shown_in
from app.work.reckoning import current
from app.work.refusal import Refusal
from app.work.swatch_known import all_swatches, known_swatch
from app.work.swatch_save import put_swatch_away, save_swatch, take_swatch_out
from app.work.swatch_take import take_gauge

router = APIRouter(prefix="/swatches")

FORM = "pages/swatches/form.html"


@router.get("")
def list_swatches(request: Request, session: ReadingSession) -> Response:
    book = current(session).book
    page = swatches_page(all_swatches(book), shown_in(book.settings))
    return render(request, "pages/swatches/list.html", page)


@router.get("/new")
def ask_new(request: Request, session: ReadingSession, yarn: str = "") -> Response:
    return render(request, FORM, new_swatch_page(current(session).book, yarn))


@router.post("/new")
def add(request: Request, session: WritingSession, posted: Posted) -> Response:
    return _saved(request, session, posted, None)


@router.get("/{swatch_id}")
def show_swatch(request: Request, session: ReadingSession, swatch_id: str) -> Response:
    swatch, book = _swatch_or_missing(session, swatch_id), current(session).book
    reader, stitches = read_stitches(request.query_params, book.settings)
    known = known_swatch(book, swatch, stitches)
    page = swatch_page(known, reader.filled(), shown_in(book.settings))
    status = 200 if reader.ok else 422
    return render(request, "pages/swatches/swatch.html", page, status, block="needle")


@router.get("/{swatch_id}/change")
def ask_change(request: Request, session: ReadingSession, swatch_id: str) -> Response:
    swatch = _swatch_or_missing(session, swatch_id)
    return render(request, FORM, swatch_form_page(current(session).book, swatch))


@router.post("/{swatch_id}/change")
def change(request: Request, session: WritingSession, posted: Posted, swatch_id: str) -> Response:
    return _saved(request, session, posted, _swatch_or_missing(session, swatch_id))


@router.post("/{swatch_id}/put-away")
def put_away(request: Request, session: WritingSession, posted: Posted, swatch_id: str) -> Response:
    swatch = _as_opened(session, swatch_id, posted)
    put_swatch_away(session, swatch, date.today())
    message = f"{swatch.name} is put away. You can take it out again below."
    return after_save(request, f"/swatches/{swatch_id}", message)


@router.post("/{swatch_id}/take-out")
def take_out(request: Request, session: WritingSession, posted: Posted, swatch_id: str) -> Response:
    swatch = _as_opened(session, swatch_id, posted)
    take_swatch_out(session, swatch)
    return after_save(request, f"/swatches/{swatch_id}", f"{swatch.name} is at hand again.")


@router.post("/{swatch_id}/take")
def take(request: Request, session: WritingSession, posted: Posted, swatch_id: str) -> Response:
    swatch = _as_opened(session, swatch_id, posted)
    plan_id = str(posted.get("garment", ""))
    if not take_gauge(session, swatch, plan_id):
        raise Stale("The garment", f"/swatches/{swatch_id}")
    name = current(session).book.plan[plan_id].name
    return after_save(request, f"/swatches/{swatch_id}", f"{name} has the new numbers.")


def _saved(request: Request, session: Session, posted: Posted, old: Swatch | None) -> Response:
    book = current(session).book
    reader, swatch = read_swatch(posted, book.settings, names_by_id(book.yarns), old)
    if old and reader.stamp != stamp(old):
        raise Stale(old.name, f"/swatches/{old.id}")
    if reader.ok:
        try:
            save_swatch(session, swatch)
        except Refusal as refusal:
            reader.refuse(refusal.field, refusal.message)
        else:
            done = "is changed" if old else "is written down"
            return after_save(request, f"/swatches/{swatch.id}", f"{swatch.name} {done}.")
    page = swatch_form_page(book, old, reader.filled())
    return render(request, FORM, page, status=422)


def _as_opened(session: Session, swatch_id: str, posted: Posted) -> Swatch:
    """The swatch, as it was when the page was opened."""
    swatch = _swatch_or_missing(session, swatch_id)
    if posted.get("stamp") != stamp(swatch):
        raise Stale(swatch.name, f"/swatches/{swatch_id}")
    return swatch


def _swatch_or_missing(session: Session, swatch_id: str) -> Swatch:
    swatch = get(session, Swatch, swatch_id)
    if swatch is None:
        raise Missing("This swatch")
    return swatch
