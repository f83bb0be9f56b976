"""The skeins of a garment in their places: put, change, take off, let the program fill."""

from fastapi import APIRouter, Request, Response
from fastapi.responses import RedirectResponse
from sqlmodel import Session

from app.web.forms.promise import read_amount, read_asked
from app.web.forms.reader import Posted, Reader
from app.web.garment_shown import (
    as_opened,
    at_part,
    back_to_garment,
    changed_garment,
    part_or_missing,
    promise_or_missing,
    show_garment,
    wanting_plan,
)
from app.web.pages.garment import Trouble, beyond_said, places
from app.web.session import WritingSession
from app.web.templating import shown_in
from app.work.assign_search import forget_search, look_longer, too_long_to_wait
from app.work.promise_fill import drop_proposed, fill_plan, keep_proposed
from app.work.promise_free import BeyondFree, NotFree
from app.work.promise_make import change_promise, promise_skein, take_off
from app.work.reckoning import current
from app.work.settings_read import settings_now

router = APIRouter(prefix="/garments/{plan_id}")


@router.post("/assign")
def assign(request: Request, session: WritingSession, posted: Posted, plan_id: str) -> Response:
    wanting_plan(session, plan_id)
    reader, asked = read_asked(posted, settings_now(session))
    part = part_or_missing(session, plan_id, asked.part_id)
    if reader.ok and asked.holding_id not in current(session).reckoning.shelf:
        reader.refuse("holding_id", "This skein is no longer on the shelf. Choose another.")
    if not reader.ok:
        trouble = Trouble(part.id, reader.filled())
        return show_garment(request, session, plan_id, part.id, trouble)
    was = current(session).book
    try:
        promise_skein(session, part.id, asked.holding_id, asked.mm)
    except BeyondFree as beyond:
        trouble = _beyond(session, part.id, reader, beyond.reason)
        return show_garment(request, session, plan_id, part.id, trouble)
    at = at_part(part.id, choosing=_still_short(session, plan_id, part.id))
    return changed_garment(session, was, plan_id, f"Put to {part.name}.", at)


@router.post("/promises/{promise_id}/change")
def change(
    request: Request, session: WritingSession, posted: Posted, plan_id: str, promise_id: str
) -> Response:
    promise = promise_or_missing(session, plan_id, promise_id)
    reader, mm = read_amount(posted, settings_now(session))
    as_opened(promise, reader.stamp, "What is promised of this skein", plan_id)
    known = current(session)
    if promise.holding_id not in known.reckoning.shelf:
        reader.refuse("amount", "This skein is no longer on the shelf. Take it off.")
    if not reader.ok:
        trouble = Trouble(promise_id, reader.filled())
        return show_garment(request, session, plan_id, trouble=trouble)
    try:
        change_promise(session, promise, mm)
    except BeyondFree as beyond:
        trouble = _beyond(session, promise_id, reader, beyond.reason)
        return show_garment(request, session, plan_id, trouble=trouble)
    message, at = "Changed what is promised.", at_part(promise.part_id, choosing=False)
    return changed_garment(session, known.book, plan_id, message, at)


@router.post("/promises/{promise_id}/off")
def off(session: WritingSession, plan_id: str, promise_id: str) -> Response:
    promise = promise_or_missing(session, plan_id, promise_id)
    was = current(session).book
    take_off(session, promise)
    message = "Taken off: it is free again."
    return changed_garment(session, was, plan_id, message, at_part(promise.part_id, choosing=True))


@router.post("/fill")
def fill(session: WritingSession, plan_id: str) -> Response:
    wanting_plan(session, plan_id)
    was = current(session).book
    if too_long_to_wait(session, plan_id):
        look_longer(session, plan_id)
        return RedirectResponse(f"/garments/{plan_id}/assign", 303)
    forget_search(session, plan_id)
    count = fill_plan(session, plan_id)
    if count == 0:
        return back_to_garment(plan_id, "Nothing on the shelf can be added to what it has.")
    message = "Proposed below, with the reasons. Keep it or drop it."
    return changed_garment(session, was, plan_id, message)


@router.post("/keep")
def keep(session: WritingSession, posted: Posted, plan_id: str) -> Response:
    wanting_plan(session, plan_id)
    was = current(session).book
    count = keep_proposed(session, plan_id, _one(posted.get("promise_id")))
    return changed_garment(session, was, plan_id, f"Kept: {_skeins(count)}.")


@router.post("/drop")
def drop(session: WritingSession, posted: Posted, plan_id: str) -> Response:
    wanting_plan(session, plan_id)
    was = current(session).book
    count = drop_proposed(session, plan_id, _one(posted.get("promise_id")))
    return changed_garment(session, was, plan_id, f"Dropped: {_skeins(count)}.")


def _one(promise_id: object) -> str | None:
    return str(promise_id) if promise_id else None


def _skeins(count: int) -> str:
    return "one proposed skein" if count == 1 else f"{count} proposed skeins"


def _still_short(session: Session, plan_id: str, part_id: str) -> bool:
    parts = current(session).reckoning.plan(plan_id).parts
    return any(one.part_id == part_id and one.short_m > 0 for one in parts)


def _beyond(session: Session, where: str, reader: Reader, reason: NotFree) -> Trouble:
    book = current(session).book
    reader.refuse("amount", beyond_said(reason, book, shown_in(book.settings)))
    return Trouble(where, reader.filled(), places(reason.elsewhere, book))
