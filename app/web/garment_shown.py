"""What the routes of a garment have in common: finding it, showing it, going back to it."""

from datetime import date

from fastapi import Request, Response
from fastapi.responses import RedirectResponse
from sqlmodel import Session

from app.book.book import Book
from app.book.plan import Part, Plan, Promise
from app.book.stamp import stamp
from app.book.words import OPEN_STATES
from app.planning.changes import Effect
from app.store.records import get
from app.web.errors import Missing, Stale
from app.web.pages.effect import effect_sentence
from app.web.pages.garment import Trouble, garment_page
from app.web.said import Said, forget, say
from app.web.templating import render, shown_in, wants_fragment
from app.work.reckoning import current

GARMENT = "pages/garments/garment.html"


def plan_or_missing(session: Session, plan_id: str) -> Plan:
    """The plan at an address; Missing where there is none."""
    plan = get(session, Plan, plan_id)
    if plan is None:
        raise Missing("This garment")
    return plan


def wanting_plan(session: Session, plan_id: str) -> Plan:
    """The plan at an address, which still wants yarn; Stale once it is finished or put away."""
    plan = plan_or_missing(session, plan_id)
    if plan.state not in OPEN_STATES:
        raise Stale(f"The plan of {plan.name}", f"/garments/{plan_id}")
    return plan


def part_or_missing(session: Session, plan_id: str, part_id: str) -> Part:
    """The part at an address; Missing where the garment has no such part."""
    part = get(session, Part, part_id)
    if part is None or part.plan_id != plan_id:
        raise Missing("This part")
    return part


def promise_or_missing(session: Session, plan_id: str, promise_id: str) -> Promise:
    """The promise at an address; Missing where the garment has no such promise."""
    promise = get(session, Promise, promise_id)
    if promise is None or promise.plan_id != plan_id:
        raise Missing("What was promised here")
    return promise


def as_opened(record: Plan | Part | Promise, typed_stamp: str, what: str, plan_id: str) -> None:
    """Stale where the record was changed since the form was opened."""
    if typed_stamp != stamp(record):
        raise Stale(what, f"/garments/{plan_id}")


def show_garment(
    request: Request,
    session: Session,
    plan_id: str,
    put: str | None = None,
    trouble: Trouble | None = None,
) -> Response:
    """The page of a garment, or its changed content for a swap; 422 where there is trouble."""
    known = current(session)
    shown = shown_in(known.book.settings)
    page = garment_page(known, shown, plan_id, date.today(), put, trouble)
    answer = render(request, GARMENT, page, status=422 if trouble else 200, block="swapped")
    if wants_fragment(request):
        forget(answer)
    return answer


def said_with(message: str, effect: Effect | None, book: Book) -> str:
    """A message with what the change did after it."""
    return f"{message} {effect_sentence(effect, shown_in(book.settings))}".strip()


def back_to_garment(
    plan_id: str, message: str, put: str | None = None, undo: int | None = None
) -> Response:
    """On to the garment's page, which says `message`; `put` keeps a choice of skeins open.

    The browser follows it with a page, htmx with the changed content of the page.
    """
    query = f"?put={put}" if put else ""
    answer = RedirectResponse(f"/garments/{plan_id}{query}", 303)
    say(answer, Said(message, undo))
    return answer
