"""Bobbins: write one down, check its grist while you spin, weigh it, use up its end."""

from datetime import date

from fastapi import APIRouter, Request, Response
from sqlmodel import Session

from app.book.book import Book
from app.book.holding import Holding
from app.book.reading import Reading
from app.book.yarn import Yarn
from app.planning.bobbins import bobbin_answer
from app.store.records import get, remove
from app.web.errors import Missing
from app.web.forms.bobbin import read_check, read_end, read_spun
from app.web.forms.filled import Filled
from app.web.forms.options import names_by_id
from app.web.forms.reader import Posted, Reader
from app.web.pages.bobbins import NewBobbinPage, bobbin_page
from app.web.pages.wool_name import wool_name
from app.web.session import ReadingSession, WritingSession
from app.web.templating import after_save, render, shown_in
from app.work.bobbin_end import use_end
from app.work.bobbin_spin import note_check, start_bobbin, weigh_bobbin, wool_for_bobbins
from app.work.reckoning import current
from app.work.refusal import Refusal

router = APIRouter(prefix="/bobbins")

PAGE = "pages/bobbins/bobbin.html"
NEW = "pages/bobbins/new.html"


@router.get("/new")
def ask_new(request: Request, session: ReadingSession) -> Response:
    form = Filled({"yarn": request.query_params.get("yarn", "")})
    return render(request, NEW, _new_page(session, form))


@router.post("/new")
def add(request: Request, session: WritingSession, posted: Posted) -> Response:
    known = current(session)
    reader = Reader(posted, known.book.settings)
    yarn = known.book.yarn.get(reader.choice("yarn", known.book.yarn) or "")
    code = " ".join(reader.text("code", longest=60).split())
    try:
        bobbin = start_bobbin(session, yarn, code, date.today()) if yarn and reader.ok else None
    except Refusal as refusal:
        reader.refuse(refusal.field, refusal.message)
        bobbin = None
    if bobbin is None:
        return render(request, NEW, _new_page(session, reader.filled()), status=422)
    return after_save(request, f"/bobbins/{bobbin.id}", f"{bobbin.code} is written down.")


@router.get("/{bobbin_id}")
def show(request: Request, session: ReadingSession, bobbin_id: str) -> Response:
    return _page(request, session, _bobbin(session, bobbin_id))


@router.post("/{bobbin_id}/check")
def check(request: Request, session: WritingSession, posted: Posted, bobbin_id: str) -> Response:
    bobbin, reader = _bobbin(session, bobbin_id), _reader(session, posted)
    checked = read_check(reader, bobbin, date.today())
    if checked is None:
        return _page(request, session, bobbin, reader)
    note_check(session, checked)
    return after_save(request, f"/bobbins/{bobbin.id}", "The check is kept.")


@router.post("/{bobbin_id}/checks/{reading_id}/remove")
def take_out(
    request: Request, session: WritingSession, bobbin_id: str, reading_id: str
) -> Response:
    checked = get(session, Reading, reading_id)
    if checked is None or checked.holding_id != bobbin_id or checked.kind != "grist":
        raise Missing("This check")
    remove(session, checked)
    return after_save(request, f"/bobbins/{bobbin_id}", "The check is taken out.")


@router.post("/{bobbin_id}/weigh")
def weigh(request: Request, session: WritingSession, posted: Posted, bobbin_id: str) -> Response:
    bobbin, reader = _bobbin(session, bobbin_id), _reader(session, posted)
    yarn = get(session, Yarn, bobbin.yarn_id or "")
    wool = {one.id: one for one in wool_for_bobbins(session, yarn)} if yarn else {}
    spun = read_spun(reader, wool)
    try:
        event = weigh_bobbin(session, bobbin, spun) if spun else None
    except Refusal as refusal:
        reader.refuse(refusal.field, refusal.message)
        event = None
    if event is None:
        return _page(request, session, bobbin, reader)
    return after_save(request, f"/bobbins/{bobbin.id}", f"{bobbin.code} is weighed.", event.seq)


@router.post("/{bobbin_id}/end")
def end(request: Request, session: WritingSession, posted: Posted, bobbin_id: str) -> Response:
    bobbin, reader = _bobbin(session, bobbin_id), _reader(session, posted)
    wanted = read_end(reader)
    try:
        made = use_end(session, bobbin, wanted) if wanted else None
    except Refusal as refusal:
        reader.refuse(refusal.field, refusal.message)
        made = None
    if made is None:
        return _page(request, session, bobbin, reader)
    rest, event = made
    return after_save(request, f"/skeins/{rest.id}", f"{rest.code} is on the shelf.", event.seq)


def _page(
    request: Request, session: Session, bobbin: Holding, reader: Reader | None = None
) -> Response:
    """The page of a bobbin; with the form that was at fault, nothing is saved."""
    known = current(session)
    answer = bobbin_answer(known.book, known.reckoning, bobbin)
    found = wool_for_bobbins(session, answer.yarn) if answer.yarn else []
    wool = {one.id: _wool_said(known.book, one) for one in found}
    form = reader.filled() if reader else None
    page = bobbin_page(answer, wool, shown_in(known.book.settings), form)
    return render(request, PAGE, page, status=422 if reader else 200)


def _wool_said(book: Book, wool: Holding) -> str:
    """ "Bramble, carded" of wool in a state, that may have a name of its own"""
    name, state = wool_name(book, wool), wool.state or ""
    return name if state in name else f"{name}, {state}"


def _new_page(session: Session, form: Filled) -> NewBobbinPage:
    spun = [one for one in current(session).book.yarns if not one.bought]
    return NewBobbinPage(form, names_by_id(spun))


def _reader(session: Session, posted: Posted) -> Reader:
    return Reader(posted, current(session).book.settings)


def _bobbin(session: Session, bobbin_id: str) -> Holding:
    found = get(session, Holding, bobbin_id)
    if found is None or found.kind != "bobbin":
        raise Missing("This bobbin")
    return found
