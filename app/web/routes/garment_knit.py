"""A garment on the needles: begin it, use its skeins."""

from datetime import date

from fastapi import APIRouter, Request, Response
from sqlmodel import Session

from app.book.errors import WoolBookError
from app.book.plan import Promise
from app.web.forms.promise import Used, read_used
from app.web.forms.reader import Posted
from app.web.garment_shown import (
    as_opened,
    at_part,
    changed_garment,
    plan_or_missing,
    promise_or_missing,
    show_garment,
)
from app.web.pages.garment import Trouble
from app.web.session import WritingSession
from app.work.knit_begin import begin_knitting
from app.work.promise_use import use_down_to, use_promised
from app.work.reckoning import current
from app.work.settings_read import settings_now

router = APIRouter(prefix="/garments/{plan_id}")


@router.post("/begin")
def begin(session: WritingSession, posted: Posted, plan_id: str) -> Response:
    plan = plan_or_missing(session, plan_id)
    as_opened(plan, str(posted.get("stamp", "")), f"The plan of {plan.name}", plan_id)
    was = current(session).book
    begin_knitting(session, plan, date.today())
    message = f"{plan.name} is being knit. What is promised to it is settled."
    return changed_garment(session, was, plan_id, message)


@router.post("/promises/{promise_id}/use")
def use(
    request: Request, session: WritingSession, posted: Posted, plan_id: str, promise_id: str
) -> Response:
    promise = promise_or_missing(session, plan_id, promise_id)
    reader, used = read_used(posted, settings_now(session), promise.mm, date.today())
    as_opened(promise, reader.stamp, "What is promised of this skein", plan_id)
    was = current(session).book
    if reader.ok:
        try:
            _knit(session, promise, used)
        except WoolBookError as error:
            reader.refuse("used" if used.left_mg is None else "left", str(error))
        else:
            at = at_part(promise.part_id, choosing=False)
            return changed_garment(session, was, plan_id, "Noted as used.", at)
    return show_garment(request, session, plan_id, trouble=Trouble(promise_id, reader.filled()))


def _knit(session: Session, promise: Promise, used: Used) -> None:
    if used.left_mg is not None:
        use_down_to(session, promise, used.left_mg, used.day)
    else:
        mm = promise.mm if used.mm is None else used.mm
        use_promised(session, promise, mm, used.day)
