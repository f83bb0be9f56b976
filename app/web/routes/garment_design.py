"""A garment planned from measurements: the form, what it gives at once, and saving it."""

from collections.abc import Mapping

from fastapi import APIRouter, Request, Response
from sqlmodel import Session

from app.book.plan import Plan
from app.planning.redraw import redraw
from app.web.forms.design import Wish, construction_chosen, read_design
from app.web.forms.design_fields import design_values
from app.web.forms.design_refused import refusal_words, refused_at
from app.web.forms.filled import Filled
from app.web.forms.gauge_swatch import FIELD as SWATCH
from app.web.forms.reader import Posted, Reader
from app.web.garment_shown import as_opened, said_with, wanting_plan
from app.web.pages.design_seen import Seen, leaves, seen
from app.web.pages.garment_design import design_page, opened_form
from app.web.session import ReadingSession, WritingSession
from app.web.templating import after_save, render, shown_in
from app.work.design_look import look
from app.work.design_save import save_design
from app.work.plan_effect import save_and_tell
from app.work.reckoning import Known, current

router = APIRouter(prefix="/garments")

PAGE = "pages/garments/design.html"
TYPED = "gauge_measure"
"""A question that has this was asked by the whole form."""


@router.get("/new/design")
def ask_new(request: Request, session: ReadingSession) -> Response:
    return _ask(request, session, None)


@router.get("/{plan_id}/design")
def ask_change(request: Request, session: ReadingSession, plan_id: str) -> Response:
    return _ask(request, session, wanting_plan(session, plan_id))


@router.post("/new/design")
def add(request: Request, session: WritingSession, posted: Posted) -> Response:
    return _save(request, session, posted, None)


@router.post("/{plan_id}/design")
def change(request: Request, session: WritingSession, posted: Posted, plan_id: str) -> Response:
    old = wanting_plan(session, plan_id)
    as_opened(old, str(posted.get("stamp", "")), f"The plan of {old.name}", plan_id)
    return _save(request, session, posted, old)


def _ask(request: Request, session: Session, old: Plan | None) -> Response:
    """The form as it was asked, else as the plan was drawn, with the garment it gives."""
    known, asked = current(session), request.query_params
    if TYPED in asked:
        return _shown(request, known, old, asked)
    named = {**_of_plan(old), **asked}
    construction = construction_chosen(named)
    person = known.book.person.get(named.get("person_id", ""))
    form = opened_form(known.book, old, construction, person)
    drawn = old is not None and old.design is not None and old.gauge is not None
    if drawn or named.get(SWATCH):
        begun = {name: named[name] for name in (SWATCH, "yarn_id") if name in asked}
        return _shown(request, known, old, {**form.values, **begun, "stamp": form.stamp})
    shown = shown_in(known.book.settings)
    page = design_page(known.book, shown, old, construction, person, form)
    return render(request, PAGE, page)


def _of_plan(old: Plan | None) -> dict[str, str]:
    if old is None:
        return {}
    kind = {"construction": old.design.construction} if old.design else {}
    return {**kind, "person_id": old.person_id or ""}


def _shown(request: Request, known: Known, old: Plan | None, values: Mapping[str, str]) -> Response:
    reader, wish = read_design(values, known.book, old)
    found = _look(reader, wish, known)
    return _page(request, known, old, reader, wish, found)


def _save(request: Request, session: Session, posted: Posted, old: Plan | None) -> Response:
    known = current(session)
    reader, wish = read_design(posted, known.book, old)
    found = _look(reader, wish, known)
    if found is None:
        return _page(request, known, old, reader, wish, None)
    done, effect = save_and_tell(session, wish.plan.id, lambda: save_design(session, wish.plan))
    also = leaves(done, known.book)
    said = f"{wish.plan.name} is {'changed' if old else 'planned, with its parts'}."
    message = said_with(" ".join(filter(None, (said, also))), effect, known.book)
    return after_save(request, f"/garments/{wish.plan.id}", message)


def _look(reader: Reader, wish: Wish, known: Known) -> Seen | None:
    """The garment as it would be; None, with the reason beside its field, where it cannot be."""
    if not reader.ok:
        return None
    try:
        redrawn = redraw(known.book, wish.plan)
    except ValueError as refusal:
        reader.refuse(refused_at(refusal, wish.construction), refusal_words(refusal))
        return None
    return seen(look(known, redrawn), wish.construction, shown_in(known.book.settings))


def _page(
    request: Request,
    known: Known,
    old: Plan | None,
    reader: Reader,
    wish: Wish,
    found: Seen | None,
) -> Response:
    shown, usual = (
        shown_in(known.book.settings),
        design_values(None, wish.construction, None, known.book.settings),
    )
    form = Filled({**usual, **reader.values}, dict(reader.errors), reader.stamp)
    page = design_page(known.book, shown, old, wish.construction, wish.person, form, found)
    return render(request, PAGE, page, 200 if found else 422, block="design")
