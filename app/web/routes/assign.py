"""How the skeins of a garment are divided: see it, look longer for better, stop, take it."""

from fastapi import APIRouter, Request, Response

from app.web.errors import Stale
from app.web.garment_shown import wanting_plan
from app.web.pages.assign import assign_page
from app.web.session import ReadingSession, WritingSession
from app.web.templating import after_save, render, shown_in
from app.work.assign_known import kept_proposal
from app.work.assign_search import (
    NothingBetter,
    better_found,
    look_longer,
    search_for,
    stop_looking,
    take_better,
)
from app.work.reckoning import current
from app.work.undo_records import remember

router = APIRouter(prefix="/garments/{plan_id}/assign")

PAGE = "pages/garments/assign.html"


@router.get("")
def show(request: Request, session: ReadingSession, plan_id: str) -> Response:
    wanting_plan(session, plan_id)
    known = current(session)
    page = assign_page(
        known,
        shown_in(known.book.settings),
        plan_id,
        kept_proposal(session, known.book, plan_id),
        search_for(session, plan_id),
        better_found(session, known.book, plan_id),
    )
    return render(request, PAGE, page, block="looking_now")


@router.post("/look")
def look(request: Request, session: ReadingSession, plan_id: str) -> Response:
    wanting_plan(session, plan_id)
    look_longer(session, plan_id)
    return after_save(request, _here(plan_id), "Looking for a better division.")


@router.post("/stop")
def stop(request: Request, session: ReadingSession, plan_id: str) -> Response:
    wanting_plan(session, plan_id)
    stop_looking(session, plan_id)
    return after_save(request, _here(plan_id), "Stopped. What it had found is kept.")


@router.post("/take")
def take(request: Request, session: WritingSession, plan_id: str) -> Response:
    plan = wanting_plan(session, plan_id)
    was = current(session).book
    try:
        take_better(session, plan_id)
    except NothingBetter:
        raise Stale(f"What {plan.name} needs, or what is free for it,", _here(plan_id)) from None
    message = "The better division is in place, as a proposal."
    return after_save(request, _here(plan_id), message, remember(session, was, message))


def _here(plan_id: str) -> str:
    return f"/garments/{plan_id}/assign"
