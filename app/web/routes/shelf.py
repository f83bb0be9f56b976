"""What the shelf covers: look at orders and sets of garments, nothing touched; keep an order."""

from fastapi import APIRouter, Request, Response

from app.web.errors import Stale
from app.web.forms.reader import Posted
from app.web.forms.shelf import read_shelf
from app.web.pages.answer import counted
from app.web.pages.shelf import looking_page, shelf_page
from app.web.session import ReadingSession, WritingSession
from app.web.templating import after_save, render, shown_in
from app.work.reckoning import current
from app.work.shelf_covers import OrderGone, ask_again, covers_so_far, keep_order, stop_covers
from app.work.undo_records import remember

router = APIRouter(prefix="/shelf")

PAGE = "pages/shelf/shelf.html"
LOOKING = "pages/shelf/looking.html"


@router.get("")
def show(request: Request, session: ReadingSession) -> Response:
    known = current(session)
    asked = read_shelf(request.query_params, known.book)
    so_far, going_on = covers_so_far(session, asked)
    if so_far.covers is None:
        page = looking_page(so_far, going_on, request.url.query)
        return render(request, LOOKING, page, block="covers")
    shown = shown_in(known.book.settings)
    found = shelf_page(known.book, so_far.covers, asked, shown)
    return render(request, PAGE, found, block="covers")


@router.post("/stop")
def stop(request: Request, session: ReadingSession) -> Response:
    stop_covers(session, read_shelf(request.query_params, current(session).book))
    return after_save(request, f"/shelf?{request.url.query}", "Stopped.")


@router.post("/look")
def look(request: Request, session: ReadingSession) -> Response:
    ask_again(session, read_shelf(request.query_params, current(session).book))
    return after_save(request, f"/shelf?{request.url.query}", "Looking at the whole shelf.")


@router.post("/keep")
def keep(request: Request, session: WritingSession, posted: Posted) -> Response:
    was = current(session).book
    asked = read_shelf(dict(posted.items()), was)
    try:
        moved = keep_order(session, asked.order, asked.anew, str(posted.get("stamp", "")))
    except OrderGone:
        raise Stale("The order of the garments", "/shelf") from None
    message = "The garments are served in this order now."
    if moved:
        message += f" {counted(moved, 'promise').capitalize()} changed with it."
    return after_save(request, "/shelf", message, remember(session, was, message))
