"""The written patterns: all of them, one, a new one, a change, a pasted table, put away."""

from datetime import date

from fastapi import APIRouter, Request, Response
from sqlmodel import Session

from app.book.pattern import Pattern
from app.book.stamp import stamp
from app.store.records import get
from app.web.errors import Missing, Stale
from app.web.forms.filled import Filled
from app.web.forms.pattern import read_pattern
from app.web.forms.pattern_sizes import MORE, with_more
from app.web.forms.reader import Posted
from app.web.pages.patterns import pattern_form_page, pattern_page, patterns_page
from app.web.session import ReadingSession, WritingSession
from app.web.templating import after_save, render, shown_in
from app.work.pattern_save import put_pattern_away, save_pattern, take_pattern_out
from app.work.reckoning import current
from app.work.refusal import Refusal

router = APIRouter(prefix="/patterns")

FORM = "pages/patterns/form.html"


@router.get("")
def list_patterns(request: Request, session: ReadingSession) -> Response:
    book = current(session).book
    page = patterns_page(book, shown_in(book.settings))
    return render(request, "pages/patterns/list.html", page)


@router.get("/new")
def ask_new(request: Request, session: ReadingSession) -> Response:
    return _form(request, session, None)


@router.post("/new")
def add(request: Request, session: WritingSession, posted: Posted) -> Response:
    return _saved(request, session, posted, None)


@router.get("/{pattern_id}")
def show(request: Request, session: ReadingSession, pattern_id: str) -> Response:
    pattern, book = pattern_or_missing(session, pattern_id), current(session).book
    page = pattern_page(book, pattern, shown_in(book.settings))
    return render(request, "pages/patterns/pattern.html", page)


@router.get("/{pattern_id}/change")
def ask_change(request: Request, session: ReadingSession, pattern_id: str) -> Response:
    return _form(request, session, pattern_or_missing(session, pattern_id))


@router.post("/{pattern_id}/change")
def change(request: Request, session: WritingSession, posted: Posted, pattern_id: str) -> Response:
    return _saved(request, session, posted, pattern_or_missing(session, pattern_id))


@router.post("/{pattern_id}/put-away")
def put_away(
    request: Request, session: WritingSession, posted: Posted, pattern_id: str
) -> Response:
    pattern = pattern_as_opened(session, pattern_id, posted)
    put_pattern_away(session, pattern, date.today())
    message = f"{pattern.name} is put away. You can take it out again below."
    return after_save(request, f"/patterns/{pattern_id}", message)


@router.post("/{pattern_id}/take-out")
def take_out(
    request: Request, session: WritingSession, posted: Posted, pattern_id: str
) -> Response:
    pattern = pattern_as_opened(session, pattern_id, posted)
    take_pattern_out(session, pattern)
    return after_save(request, f"/patterns/{pattern_id}", f"{pattern.name} is at hand again.")


def pattern_or_missing(session: Session, pattern_id: str) -> Pattern:
    """The pattern at an address; Missing where there is none."""
    pattern = get(session, Pattern, pattern_id)
    if pattern is None:
        raise Missing("This pattern")
    return pattern


def pattern_as_opened(session: Session, pattern_id: str, posted: Posted) -> Pattern:
    """The pattern, as it was when the page was opened; Stale otherwise."""
    pattern = pattern_or_missing(session, pattern_id)
    if posted.get("stamp") != stamp(pattern):
        raise Stale(pattern.name, f"/patterns/{pattern_id}")
    return pattern


def _form(
    request: Request, session: Session, pattern: Pattern | None, form: Filled | None = None
) -> Response:
    page = pattern_form_page(current(session).book, pattern, form)
    return render(request, FORM, page, status=422 if form and form.errors else 200)


def _saved(request: Request, session: Session, posted: Posted, old: Pattern | None) -> Response:
    reader, pattern = read_pattern(posted, current(session).book.settings, old)
    if reader.typed("more") in MORE:
        wider = with_more(reader.values, reader.typed("more"))
        return _form(request, session, old, Filled(wider, {}, reader.stamp))
    if old and reader.stamp != stamp(old):
        raise Stale(old.name, f"/patterns/{old.id}")
    if reader.ok:
        try:
            save_pattern(session, pattern)
        except Refusal as refusal:
            reader.refuse(refusal.field, refusal.message)
        else:
            done = "is changed" if old else "is written down"
            return after_save(request, f"/patterns/{pattern.id}", f"{pattern.name} {done}.")
    return _form(request, session, old, reader.filled())
