"""The ways out of a garment's shortfall: see them, look at one, take one."""

from fastapi import APIRouter, Request, Response
from sqlmodel import Session

from app.planning.left_over import fits_left_over
from app.web.errors import Missing, Stale
from app.web.forms.reader import Posted
from app.web.garment_shown import said_with, wanting_plan
from app.web.pages.ways_beside import beside_page
from app.web.pages.ways_out import said_words, way_page, ways_page
from app.web.routes.picture import FILE
from app.web.session import ReadingSession, WritingSession
from app.web.templating import after_save, draw, render, shown_in, wants_fragment
from app.work.plan_effect import save_and_tell
from app.work.reckoning import current
from app.work.undo_records import remember
from app.work.ways_out import (
    NoSuchWay,
    Seen,
    look_again,
    look_at,
    stop_ways,
    take_way,
    ways_looked_for,
)

router = APIRouter(prefix="/garments/{plan_id}/ways-out")

LIST = "pages/garments/ways_out.html"
ONE = "pages/garments/way_out.html"
TWO = "pages/garments/ways_beside.html"


@router.get("")
def show(request: Request, session: ReadingSession, plan_id: str) -> Response:
    wanting_plan(session, plan_id)
    known, (looked, going_on) = current(session), ways_looked_for(session, plan_id)
    fits = fits_left_over(known.book, known.reckoning, plan_id)
    shown = shown_in(known.book.settings)
    short, whole = known.reckoning.plan(plan_id).short_m > 0, not wants_fragment(request)
    page = ways_page(known.book, plan_id, short, looked, going_on, fits, shown, whole)
    return render(request, LIST, page, block="ways")


@router.post("/stop")
def stop(request: Request, session: ReadingSession, plan_id: str) -> Response:
    wanting_plan(session, plan_id)
    stop_ways(session, plan_id)
    return after_save(request, _here(plan_id), "Stopped. The ways out found so far are listed.")


@router.post("/look")
def look_on(request: Request, session: ReadingSession, plan_id: str) -> Response:
    wanting_plan(session, plan_id)
    look_again(session, plan_id)
    return after_save(request, _here(plan_id), "Looking for ways out.")


@router.post("/take")
def take(request: Request, session: WritingSession, posted: Posted, plan_id: str) -> Response:
    plan = wanting_plan(session, plan_id)
    was = current(session).book
    key, typed = str(posted.get("key", "")), str(posted.get("stamp", ""))
    try:
        judged, effect = save_and_tell(
            session, plan_id, lambda: take_way(session, plan_id, key, typed)
        )
    except NoSuchWay:
        raise Stale(f"What this way out of {plan.name} changes", _here(plan_id)) from None
    title = said_words(judged.proposal.title, shown_in(was.settings))
    listed = " It is on the work list." if judged.proposal.seen.to_come else ""
    message = said_with(f"Taken: {title[:1].lower()}{title[1:]}.{listed}", effect, was)
    undo = remember(session, was, message)
    return after_save(request, f"/garments/{judged.proposal.about}", message, undo)


@router.get("/beside")
def beside(request: Request, session: ReadingSession, plan_id: str) -> Response:
    wanting_plan(session, plan_id)
    keys = list(dict.fromkeys(request.query_params.getlist("way")))
    if len(keys) != 2:
        return after_save(request, _here(plan_id), "Tick two ways out to see them side by side.")
    seen = [_seen(session, plan_id, key) for key in keys]
    return render(request, TWO, beside_page(seen, shown_in(current(session).book.settings)))


@router.get("/{key}")
def look(request: Request, session: ReadingSession, plan_id: str, key: str) -> Response:
    wanting_plan(session, plan_id)
    seen = _seen(session, plan_id, key)
    return render(request, ONE, way_page(seen, shown_in(current(session).book.settings)))


@router.get("/{key}/picture.svg")
def picture_of(session: ReadingSession, plan_id: str, key: str) -> Response:
    wanting_plan(session, plan_id)
    shown = shown_in(current(session).book.settings)
    drawn = way_page(_seen(session, plan_id, key), shown).drawn
    return Response(draw(FILE, {"drawn": drawn}), media_type="image/svg+xml")


def _seen(session: Session, plan_id: str, key: str) -> Seen:
    try:
        return look_at(session, plan_id, key)
    except NoSuchWay:
        raise Missing("This way out") from None


def _here(plan_id: str) -> str:
    return f"/garments/{plan_id}/ways-out"
