"""The yarns: totals of all, one with its skeins, a new one, a change."""

from fastapi import APIRouter, Request, Response
from sqlmodel import Session

from app.book.stamp import stamp
from app.book.yarn import Yarn
from app.store.records import get
from app.web.errors import Missing, NotNow, Stale
from app.web.forms.filled import Filled
from app.web.forms.reader import Posted, Reader
from app.web.forms.yarn import colour_kept, read_yarn, yarn_values
from app.web.pages.yarns import yarn_form_page, yarn_page, yarns_page
from app.web.session import ReadingSession, WritingSession, settings_of_request
from app.web.templating import after_save, render, shown_in
from app.work.reckoning import current
from app.work.refusal import Refusal
from app.work.yarn_known import all_yarns, known_yarn
from app.work.yarn_remove import remove_yarn
from app.work.yarn_save import save_yarn

router = APIRouter(prefix="/yarns")

FORM = "pages/yarns/form.html"


@router.get("")
def list_yarns(request: Request, session: ReadingSession) -> Response:
    shown = shown_in(settings_of_request(request))
    return render(request, "pages/yarns/list.html", yarns_page(all_yarns(session), shown))


@router.get("/new")
def ask_new(request: Request, session: ReadingSession) -> Response:
    book = current(session).book
    values = yarn_values(None, book.settings)
    fleece = request.query_params.get("fleece", "")
    values["fleece"] = fleece if fleece in book.fleece else ""
    return render(request, FORM, yarn_form_page(book, Filled(values), None))


@router.post("/new")
def add(request: Request, session: WritingSession, posted: Posted) -> Response:
    return _saved(request, session, posted, None)


@router.get("/{yarn_id}")
def show_yarn(request: Request, session: ReadingSession, yarn_id: str) -> Response:
    known = current(session)
    page = Reader(request.query_params, known.book.settings).whole("page", least=1, most=10_000)
    found = known_yarn(session, known, yarn_id, page or 1)
    if found is None:
        raise Missing("This yarn")
    shown = shown_in(known.book.settings)
    return render(request, "pages/yarns/yarn.html", yarn_page(known, found, page or 1, shown))


@router.get("/{yarn_id}/change")
def ask_change(request: Request, session: ReadingSession, yarn_id: str) -> Response:
    book, yarn = current(session).book, _yarn_or_missing(session, yarn_id)
    form = Filled(yarn_values(yarn, book.settings))
    return render(request, FORM, yarn_form_page(book, form, yarn))


@router.post("/{yarn_id}/change")
def change(request: Request, session: WritingSession, posted: Posted, yarn_id: str) -> Response:
    return _saved(request, session, posted, _yarn_or_missing(session, yarn_id))


@router.post("/{yarn_id}/remove")
def take_out(request: Request, session: WritingSession, posted: Posted, yarn_id: str) -> Response:
    yarn = _yarn_or_missing(session, yarn_id)
    if posted.get("stamp") != stamp(yarn):
        raise Stale(yarn.name, f"/yarns/{yarn_id}")
    try:
        remove_yarn(session, yarn)
    except Refusal as refusal:
        raise NotNow(refusal.message, f"/yarns/{yarn_id}") from refusal
    return after_save(request, "/yarns", f"{yarn.name} is taken out.")


def _saved(request: Request, session: Session, posted: Posted, old: Yarn | None) -> Response:
    book = current(session).book
    fleeces = {one.id: one.name for one in book.fleeces}
    reader, yarn = read_yarn(posted, book.settings, fleeces, old)
    if old and reader.stamp != stamp(old):
        raise Stale(old.name, f"/yarns/{old.id}")
    if reader.ok:
        try:
            save_yarn(session, yarn)
        except Refusal as refusal:
            reader.refuse(refusal.field, refusal.message)
        else:
            done = "is changed" if old else "is written down"
            return after_save(request, f"/yarns/{yarn.id}", f"{yarn.name} {done}.")
    page = yarn_form_page(book, reader.filled(**colour_kept(reader)), old)
    return render(request, FORM, page, status=422)


def _yarn_or_missing(session: Session, yarn_id: str) -> Yarn:
    yarn = get(session, Yarn, yarn_id)
    if yarn is None:
        raise Missing("This yarn")
    return yarn
