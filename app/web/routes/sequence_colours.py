"""The colours of a garment's skeins: seen, and a join that would show drawn out."""

from fastapi import APIRouter, Request, Response

from app.book.stamp import stamp
from app.planning.colours_blend import blended
from app.web.errors import NotNow, Stale
from app.web.forms.reader import Posted, Reader
from app.web.garment_shown import part_or_missing, said_with, wanting_plan
from app.web.pages.sequence_colours import colours_page
from app.web.session import ReadingSession, WritingSession
from app.web.templating import after_save, render, shown_in, wants_fragment
from app.work.plan_effect import save_and_tell
from app.work.reckoning import current
from app.work.undo_records import remember
from app.work.ways_out import save_what_if

router = APIRouter(prefix="/garments/{plan_id}/colours")

PAGE = "pages/garments/colours.html"


@router.get("")
def show(request: Request, session: ReadingSession, plan_id: str) -> Response:
    plan, known = wanting_plan(session, plan_id), current(session)
    shown = shown_in(known.book.settings)
    page = colours_page(known, plan, shown, whole=not wants_fragment(request))
    return render(request, PAGE, page, block="colours")


@router.post("")
def alternate(request: Request, session: WritingSession, posted: Posted, plan_id: str) -> Response:
    """The skeins that meet at a row of a part take turns around it."""
    plan, book = wanting_plan(session, plan_id), current(session).book
    reader = Reader(posted, book.settings)
    part = part_or_missing(session, plan_id, reader.typed("part_id"))
    if reader.stamp != stamp(part):
        raise Stale(part.name, f"/garments/{plan_id}")
    change = blended(book, plan, part.id, reader.whole("row") or 0, reader.typed("next_id"))
    if change is None:
        raise NotNow("These two cannot take turns there.", f"/garments/{plan_id}/colours")
    _, does = save_and_tell(session, plan_id, lambda: save_what_if(session, change))
    message = said_with(f"{part.name}: the two skeins take turns around the join.", does, book)
    undo = remember(session, book, message)
    return after_save(request, f"/garments/{plan_id}", message, undo)
