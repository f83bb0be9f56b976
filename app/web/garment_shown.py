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
from app.work.undo_records import last_change, remember

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
    last = last_change(session, known.book, lambda one: one.about(plan_id))
    page = garment_page(known, shown, plan_id, date.today(), put, trouble, last)
    answer = render(request, GARMENT, page, status=422 if trouble else 200, block="swapped")
    if wants_fragment(request):
        forget(answer)
    return answer


def said_with(message: str, effect: Effect | None, book: Book) -> str:
    """A message with what the change did after it."""
    return f"{message} {effect_sentence(effect, shown_in(book.settings))}".strip()


def changed_garment(
    session: Session, was: Book, plan_id: str, message: str, at: str = ""
) -> Response:
    """On to the garment's page, which offers to undo what has changed since the book `was`."""
    return back_to_garment(plan_id, message, at, remember(session, was, message))


def back_to_garment(plan_id: str, message: str, at: str = "", undo: str | None = None) -> Response:
    """On to a place of the garment's page, which says `message`: see `at_part`.

    The browser follows it with a page, htmx with the changed content of the page.
    """
    answer = RedirectResponse(f"/garments/{plan_id}{at}", 303)
    say(answer, Said(message, undo))
    return answer


def at_part(part_id: str, choosing: bool) -> str:
    """A part's place on the page of its garment; its choice of skeins is open while `choosing`."""
    query = f"?put={part_id}" if choosing else ""
    return f"{query}#part-{part_id}"
