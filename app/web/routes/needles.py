"""A garment on the needles: where she is, rows ticked off, balls weighed, knitting undone.

A device that was without a connection sends its ticks and weighings later; it asks for JSON, and
takes out of its own keeping what is acknowledged here. Each has an id and is counted once.
"""

from dataclasses import replace
from datetime import date, datetime

from fastapi import APIRouter, Request, Response
from fastapi.responses import JSONResponse, RedirectResponse
from sqlmodel import Session

from app.book.errors import WoolBookError
from app.book.ids import new_id
from app.book.plan import Part, Plan
from app.planning.knitting.done import rows_done
from app.planning.knitting.forecast import Forecast
from app.planning.knitting.piece import rows_of_piece
from app.store.taps import first_time
from app.web.errors import Missing
from app.web.forms.filled import Filled
from app.web.forms.needles import Weighed, read_rip, read_taps, read_weighed
from app.web.forms.reader import Posted, Reader
from app.web.garment_shown import part_or_missing, plan_or_missing
from app.web.pages.answer import listed
from app.web.pages.needles import needles_page
from app.web.pages.needles_strip import strip_page
from app.web.pages.needles_weigh import doubt_said, weighing_values
from app.web.session import ReadingSession, WritingSession, give_up_changes
from app.web.templating import after_save, render, shown_in
from app.work.knit_rip import rip_back
from app.work.knit_tick import tick
from app.work.knit_weigh import Doubted, weigh_ball
from app.work.reckoning import current
from app.work.undo_records import last_change, remember

router = APIRouter(prefix="/garments/{plan_id}/needles")

PAGE = "pages/needles/needles.html"
STRIP = "pages/needles/strip.html"


@router.get("")
def show(request: Request, session: ReadingSession, plan_id: str) -> Response:
    plan = plan_or_missing(session, plan_id)
    if plan.state != "being knit":
        return RedirectResponse(f"/garments/{plan_id}", 303)
    return _page(request, session, plan_id)


@router.get("/{part_id}/{piece}")
def rows(
    request: Request,
    session: ReadingSession,
    plan_id: str,
    part_id: str,
    piece: int,
    together: str = "",
) -> Response:
    part = _piece(session, plan_id, part_id, piece)
    return _strip(request, session, part, piece, bool(together))


@router.post("/ticks")
def tick_off(request: Request, session: WritingSession, posted: Posted, plan_id: str) -> Response:
    _on_needles(session, plan_id)
    book = current(session).book
    reader, taps = read_taps(posted, book.settings, rows_done(book, plan_id))
    if not reader.ok:
        return _refused(request, session, reader, plan_id)
    tick(session, plan_id, taps, date.today())
    if _wants_json(request):
        return JSONResponse({"kept": [one.id for one in taps], "rows": _rows_now(session, plan_id)})
    here = f"/garments/{plan_id}/needles/{taps[0].part_id}/{taps[0].piece}"
    together = "?together=1" if posted.get("together") else ""
    return RedirectResponse(f"{here}{together}#strip", 303)


@router.post("/weigh")
def weigh(request: Request, session: WritingSession, posted: Posted, plan_id: str) -> Response:
    _on_needles(session, plan_id)
    known = current(session)
    pieces = {
        (one.place.part_id, one.place.piece): one.place.of
        for one in Forecast(known.book, known.reckoning.plan(plan_id)).pieces
    }
    reader, seen = read_weighed(posted, known.book.settings, pieces, datetime.now())
    if reader.ok and seen.holding_id not in known.book.holding:
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


@router.post("/rip")
def undo_rows(request: Request, session: WritingSession, posted: Posted, plan_id: str) -> Response:
    _on_needles(session, plan_id)
    book = current(session).book
    number = str(posted.get("piece", ""))
    piece = int(number[:9]) if number.isascii() and number.isdecimal() else 0
    part = _piece(session, plan_id, str(posted.get("part_id", "")), piece)
    done = rows_done(book, plan_id).get((part.id, piece), 0)
    reader, back = read_rip(posted, book.settings, (part.id, piece), done, date.today())
    if reader.ok:
        try:
            made = rip_back(session, plan_id, back)
        except WoolBookError as error:
            reader.refuse("ripped", str(error))
        else:
            codes = listed([one.code for one in made])
            message = f"{part.name} is back at row {back.rows}."
            if made:
                message += (
                    f" Its yarn is {codes} now, promised to {part.name} again: wash it and hang it"
                    " to dry before you knit with it."
                )
            undo = remember(session, book, message)
            url = f"/garments/{plan_id}/needles/{part.id}/{piece}"
            return after_save(request, url, message, undo)
    give_up_changes(request)
    return _strip(request, session, part, piece, form=reader.filled())


def _on_needles(session: Session, plan_id: str) -> Plan:
    """The plan, which is being knit; Missing where there is none, or it is off the needles."""
    plan = plan_or_missing(session, plan_id)
    if plan.state != "being knit":
        raise Missing(f"{plan.name}, as it is not on the needles,")
    return plan


def _piece(session: Session, plan_id: str, part_id: str, piece: int) -> Part:
    """A part that is being knit and has such a piece, with rows; else Missing."""
    _on_needles(session, plan_id)
    part = part_or_missing(session, plan_id, part_id)
    if not rows_of_piece(current(session).book, plan_id, part_id, piece):
        raise Missing("This piece")
    return part


def _page(
    request: Request,
    session: Session,
    plan_id: str,
    form: Filled | None = None,
    question: str = "",
) -> Response:
    known, today = current(session), date.today()
    book, shown = known.book, shown_in(known.book.settings)
    if form is None:
        pieces = Forecast(book, known.reckoning.plan(plan_id)).pieces
        form = Filled(weighing_values(book, pieces, plan_id, new_id()))
    last = last_change(session, book, lambda one: one.about(plan_id))
    asked = None
    if "hours" in request.query_params:
        asked = Filled({"hours": request.query_params["hours"]})
    page = needles_page(known, shown, plan_id, form, today, question, asked, last)
    refused = bool(form.errors or question)
    return render(request, PAGE, page, status=422 if refused else 200)


def _strip(
    request: Request,
    session: Session,
    part: Part,
    piece: int,
    together: bool = False,
    form: Filled | None = None,
) -> Response:
    known, plan_id = current(session), part.plan_id
    last = last_change(session, known.book, lambda one: one.about(plan_id))
    page = strip_page(known, part, piece, new_id(), date.today(), together, form, last)
    return render(request, STRIP, page, status=422 if form and form.errors else 200)


def _refused(request: Request, session: Session, reader: Reader, plan_id: str) -> Response:
    """Ticks that cannot be read, or a row that was not said: with the strip they came from."""
    if _wants_json(request):
        give_up_changes(request)
        return JSONResponse({"question": " ".join(reader.errors.values())}, 422)
    number = reader.typed("piece")
    piece = int(number[:9]) if number.isascii() and number.isdecimal() else 0
    part = _piece(session, plan_id, reader.typed("part_id"), piece)
    form = replace(reader.filled(), values={"up_to": reader.typed("up_to")})
    return _strip(request, session, part, piece, reader.flag("together"), form)


def _not_weighed(
    request: Request, session: Session, plan_id: str, reader: Reader, question: str = ""
) -> Response:
    """A weighing that is asked about, or at fault: nothing of it is saved, all of it is shown."""
    give_up_changes(request)
    if not _wants_json(request):
        return _page(request, session, plan_id, reader.filled(), question)
    told = [question] if question else [*reader.errors.values()]
    return JSONResponse({"asked": reader.typed("id"), "question": " ".join(told)}, 422)


def _kept(
    request: Request, seen: Weighed, url: str, message: str, undo: str | None = None
) -> Response:
    answer = after_save(request, url, message, undo)
    if not _wants_json(request):
        return answer
    told = JSONResponse({"kept": [seen.id], "go": url})
    told.headers["set-cookie"] = answer.headers["set-cookie"]
    return told


def _rows_now(session: Session, plan_id: str) -> dict[str, int]:
    """Rows done of each piece, as the forms name it."""
    done = rows_done(current(session).book, plan_id)
    return {f"{piece} {part_id}": rows for (part_id, piece), rows in done.items()}


def _wants_json(request: Request) -> bool:
    return "application/json" in request.headers.get("accept", "")
