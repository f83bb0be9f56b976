"""The ways out of a garment's shortfall: see them, look at one, take one."""

from fastapi import APIRouter, Request, Response

from app.planning.left_over import fits_left_over
from app.web.errors import Missing, Stale
from app.web.forms.reader import Posted
from app.web.garment_shown import said_with, wanting_plan
from app.web.pages.ways_out import said_words, way_page, ways_page
from app.web.session import ReadingSession, WritingSession
from app.web.templating import after_save, render, shown_in, wants_fragment
from app.work.plan_effect import save_and_tell
from app.work.reckoning import current
from app.work.undo_records import remember
from app.work.ways_out import NoSuchWay, look_at, take_way, ways_now

router = APIRouter(prefix="/garments/{plan_id}/ways-out")

LIST = "pages/garments/ways_out.html"
ONE = "pages/garments/way_out.html"


@router.get("")
def show(request: Request, session: ReadingSession, plan_id: str) -> Response:
    wanting_plan(session, plan_id)
    known, ways = current(session), ways_now(session, plan_id)
    fits = fits_left_over(known.book, known.reckoning, plan_id)
    shown = shown_in(known.book.settings)
    short, whole = known.reckoning.plan(plan_id).short_m > 0, not wants_fragment(request)
    page = ways_page(known.book, plan_id, short, ways, fits, shown, whole)
    return render(request, LIST, page, block="ways")


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
        back = f"/garments/{plan_id}/ways-out"
        raise Stale(f"What this way out of {plan.name} changes", back) from None
    title = said_words(judged.proposal.title, shown_in(was.settings))
    listed = " It is on the work list." if judged.proposal.seen.to_come else ""
    message = said_with(f"Taken: {title[:1].lower()}{title[1:]}.{listed}", effect, was)
    undo = remember(session, was, message)
    return after_save(request, f"/garments/{judged.proposal.about}", message, undo)


@router.get("/{key}")
def look(request: Request, session: ReadingSession, plan_id: str, key: str) -> Response:
    wanting_plan(session, plan_id)
    try:
        seen = look_at(session, plan_id, key)
    except NoSuchWay:
        raise Missing("This way out") from None
    return render(request, ONE, way_page(seen, shown_in(current(session).book.settings)))
