"""A ball on the needles is weighed: kept, or asked about where the scale says something odd."""

from datetime import date, datetime

from fastapi import APIRouter, Request, Response
from fastapi.responses import JSONResponse
from sqlmodel import Session

from app.book.words import YARN_KINDS
from app.planning.knitting.done import rows_done
from app.planning.knitting.forecast import Forecast
from app.store.taps import first_time
from app.web.forms.needles import Weighed, read_weighed
from app.web.forms.reader import Posted, Reader
from app.web.needles_shown import on_needles, show_needles, wants_json
from app.web.pages.needles_weigh import doubt_said
from app.web.session import WritingSession, give_up_changes
from app.web.templating import after_save, shown_in
from app.work.knit_weigh import Doubted, weigh_ball
from app.work.reckoning import current
from app.work.undo_records import remember

router = APIRouter(prefix="/garments/{plan_id}/needles")


@router.post("/weigh")
def weigh(request: Request, session: WritingSession, posted: Posted, plan_id: str) -> Response:
    on_needles(session, plan_id)
    known = current(session)
    pieces = {
        (one.place.part_id, one.place.piece): one.place.of
        for one in Forecast(known.book, known.reckoning.plan(plan_id)).pieces
    }
    reader, seen = read_weighed(posted, known.book.settings, pieces, datetime.now())
    ball = known.book.holding.get(seen.holding_id)
    if reader.ok and (
        not ball or ball.kind not in YARN_KINDS or ball.id not in known.book.balances
    ):
        reader.refuse("holding_id", "Choose a ball.")
    if not reader.ok:
        return _not_weighed(request, session, plan_id, reader)
    url = f"/garments/{plan_id}/needles"
    if not first_time(session, seen.id, date.today()):
        return _kept(request, seen, url, "That weighing is kept already.")
    rows = rows_done(known.book, plan_id).get(seen.piece, 0) if seen.rows is None else seen.rows
    try:
        weigh_ball(session, plan_id, seen.at(rows))
    except Doubted as doubted:
        code, shown = known.book.holding[seen.holding_id].code, shown_in(known.book.settings)
        told = doubt_said(doubted.doubt, code, rows, shown, shown.mass(seen.mg / 1000))
        return _not_weighed(request, session, plan_id, reader, told)
    code, mass = known.book.holding[seen.holding_id].code, shown_in(known.book.settings).mass
    message = f"{code} weighs {mass(seen.mg / 1000)} at row {rows}."
    return _kept(request, seen, url, message, remember(session, known.book, message))


def _not_weighed(
    request: Request, session: Session, plan_id: str, reader: Reader, question: str = ""
) -> Response:
    """A weighing that is asked about, or at fault: nothing of it is saved, all of it is shown."""
    give_up_changes(request)
    if not wants_json(request):
        return show_needles(request, session, plan_id, reader.filled(), question)
    told = [question] if question else [*reader.errors.values()]
    return JSONResponse({"asked": reader.typed("id"), "question": " ".join(told)}, 422)


def _kept(
    request: Request, seen: Weighed, url: str, message: str, undo: str | None = None
) -> Response:
    answer = after_save(request, url, message, undo)
    if not wants_json(request):
        return answer
    told = JSONResponse({"kept": [seen.id], "go": url})
    told.headers["set-cookie"] = answer.headers["set-cookie"]
    return told
