"""People to knit for and their measures."""

from fastapi import APIRouter, Request, Response
from sqlmodel import Session

from app.book.ids import new_id
from app.book.person import Person
from app.book.stamp import stamp
from app.web.errors import Missing, Stale
from app.web.forms.filled import Filled
from app.web.forms.person import filled_person, read_person
from app.web.forms.reader import Posted, Reader
from app.web.pages.people import people_page, person_form_page
from app.web.session import READS, ReadingSession, WritingSession, settings_of_request
from app.web.templating import after_save, render, shown_in
from app.work.person_save import people, person, save_person
from app.work.reckoning import current
from app.work.refusal import Refusal
from app.work.settings_read import settings_now

router = APIRouter()

LIST = "/settings/people"
FORM = "pages/settings/person.html"


@router.get(LIST)
def show(request: Request, session: ReadingSession) -> Response:
    known = current(session)
    page = people_page(people(session), known, shown_in(known.book.settings))
    return render(request, "pages/settings/people.html", page)


@router.get("/settings/people/new", dependencies=[READS])
def ask_new(request: Request) -> Response:
    shown = shown_in(settings_of_request(request))
    return render(request, FORM, person_form_page(Filled(), shown))


@router.post("/settings/people/new")
def add(request: Request, session: WritingSession, posted: Posted) -> Response:
    return _saved(request, session, posted, None)


@router.get("/settings/people/{person_id}/change")
def ask_change(request: Request, session: ReadingSession, person_id: str) -> Response:
    old = _person_or_missing(session, person_id)
    settings = settings_now(session)
    page = person_form_page(filled_person(old, settings), shown_in(settings), old)
    return render(request, FORM, page)


@router.post("/settings/people/{person_id}/change")
def change(request: Request, session: WritingSession, posted: Posted, person_id: str) -> Response:
    old = _person_or_missing(session, person_id)
    if str(posted.get("stamp")) != stamp(old):
        raise Stale(f"What is written of {old.name}", LIST)
    return _saved(request, session, posted, old)


def _saved(request: Request, session: Session, posted: Posted, old: Person | None) -> Response:
    reader = Reader(posted, settings_now(session))
    wanted = read_person(reader, old or Person(id=new_id(), name=""))
    try:
        if reader.ok:
            save_person(session, wanted)
    except Refusal as refusal:
        reader.refuse(refusal.field, refusal.message)
    if not reader.ok:
        page = person_form_page(reader.filled(), shown_in(reader.settings), old)
        return render(request, FORM, page, status=422)
    return after_save(request, LIST, f"What you wrote of {wanted.name} is saved.")


def _person_or_missing(session: Session, person_id: str) -> Person:
    found = person(session, person_id)
    if found is None:
        raise Missing("This person")
    return found
