"""A garment on the needles: where she is, rows ticked off, balls weighed, knitting undone.

A device that was without a connection sends its ticks and weighings later; it asks for JSON, and
takes out of its own keeping what is acknowledged here. Each has an id and is counted once.
"""

from dataclasses import replace
from datetime import date

from fastapi import APIRouter, Request, Response
from fastapi.responses import JSONResponse, RedirectResponse
from sqlmodel import Session

from app.book.errors import WoolBookError
from app.book.ids import new_id
from app.book.plan import Part
from app.planning.knitting.done import rows_done
from app.planning.knitting.piece import rows_of_piece
from app.store.records import load_book
from app.web.errors import Missing
from app.web.forms.filled import Filled
from app.web.forms.needles import read_rip, read_taps
from app.web.forms.reader import Posted, Reader
from app.web.garment_shown import part_or_missing, plan_or_missing
from app.web.needles_shown import on_needles, show_needles, wants_json
from app.web.pages.answer import listed
from app.web.pages.needles_strip import strip_page
from app.web.session import ReadingSession, WritingSession, give_up_changes
from app.web.templating import after_save, render
from app.work.knit_rip import rip_back
from app.work.knit_tick import tick
from app.work.reckoning import current
from app.work.undo_records import last_change, remember

router = APIRouter(prefix="/garments/{plan_id}/needles")

STRIP = "pages/needles/strip.html"


@router.get("")
def show(request: Request, session: ReadingSession, plan_id: str) -> Response:
    plan = plan_or_missing(session, plan_id)
    if plan.state != "being knit":
        return RedirectResponse(f"/garments/{plan_id}", 303)
    return show_needles(request, session, plan_id)


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
    on_needles(session, plan_id)
    book = current(session).book
    reader, taps = read_taps(posted, book.settings, rows_done(book, plan_id))
    if not reader.ok:
        return _refused(request, session, reader, plan_id)
    tick(session, plan_id, taps, date.today())
    if wants_json(request):
        return JSONResponse({"kept": [one.id for one in taps], "rows": _rows_now(session, plan_id)})
    here = f"/garments/{plan_id}/needles/{taps[0].part_id}/{taps[0].piece}"
    together = "?together=1" if posted.get("together") else ""
    return RedirectResponse(f"{here}{together}#strip", 303)


@router.post("/rip")
def undo_rows(request: Request, session: WritingSession, posted: Posted, plan_id: str) -> Response:
    on_needles(session, plan_id)
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


def _piece(session: Session, plan_id: str, part_id: str, piece: int) -> Part:
    """A part that is being knit and has such a piece, with rows; else Missing."""
    on_needles(session, plan_id)
    part = part_or_missing(session, plan_id, part_id)
    if not rows_of_piece(current(session).book, plan_id, part_id, piece):
        raise Missing("This piece")
    return part


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
    if wants_json(request):
        give_up_changes(request)
        return JSONResponse({"question": " ".join(reader.errors.values())}, 422)
    number = reader.typed("piece")
    piece = int(number[:9]) if number.isascii() and number.isdecimal() else 0
    part = _piece(session, plan_id, reader.typed("part_id"), piece)
    form = replace(reader.filled(), values={"up_to": reader.typed("up_to")})
    return _strip(request, session, part, piece, reader.flag("together"), form)


def _rows_now(session: Session, plan_id: str) -> dict[str, int]:
    """Rows done of each piece, as the forms name it."""
    done = rows_done(load_book(session), plan_id)
    return {f"{piece} {part_id}": rows for (part_id, piece), rows in done.items()}
