"""The wool book: its events, its balances, the way of the wool, and taking back with a reason."""

from datetime import date

from fastapi import APIRouter, Request, Response

from app.book.errors import WoolBookError
from app.store.wool_list import Shelf
from app.web.errors import Missing, NotNow
from app.web.forms.filled import Filled
from app.web.forms.reader import Posted, Reader
from app.web.pages.wool_book import balances_page, wool_book_page
from app.web.pages.wool_undo import wool_undo_page
from app.web.pages.wool_way import wool_way_page
from app.web.session import ReadingSession, WritingSession, settings_of_request
from app.web.templating import after_save, render, shown_in
from app.work.event_undo import undo_event
from app.work.reckoning import current
from app.work.wool_book import looked_at, read_balances, read_events

router = APIRouter(prefix="/wool-book")

UNDO = "pages/wool_book/undo.html"
LAST_PAGE = 1_000_000


@router.get("")
def show(
    request: Request, session: ReadingSession, before: str = "", corrections: str = ""
) -> Response:
    only = corrections == "1"
    found = read_events(session, _number(before), only)
    page = wool_book_page(found, only, shown_in(settings_of_request(request)))
    return render(request, "pages/wool_book/events.html", page)


@router.get("/balances")
def balances(
    request: Request, session: ReadingSession, of: str = "other", page: str = "1"
) -> Response:
    shelf: Shelf = "yarn" if of == "yarn" else "other"
    number = min(_number(page) or 1, LAST_PAGE)
    found = read_balances(session, shelf, number)
    shown = shown_in(settings_of_request(request))
    drawn = balances_page(found, shelf == "yarn", number, shown)
    return render(request, "pages/wool_book/balances.html", drawn)


@router.get("/event/{seq}")
def ask_undo(request: Request, session: ReadingSession, seq: int) -> Response:
    return _ask(request, session, seq, Filled({"reason": "entered by mistake"}))


@router.post("/event/{seq}")
def undo(request: Request, session: WritingSession, posted: Posted, seq: int) -> Response:
    reader = Reader(posted, settings_of_request(request))
    reason = reader.text("reason", required=True, longest=200)
    if not reader.ok:
        return _ask(request, session, seq, reader.filled(), 422)
    try:
        event = undo_event(session, seq, date.today(), reason)
    except WoolBookError as error:
        raise NotNow(str(error), "/wool-book") from error
    if event is None:
        raise Missing("This event")
    return after_save(request, "/wool-book", f"Number {seq} is taken back: {reason}.")


@router.get("/{holding_id}")
def show_way(request: Request, session: ReadingSession, holding_id: str) -> Response:
    book = current(session).book
    if holding_id not in book.holding:
        raise Missing("This wool")
    page = wool_way_page(book, holding_id, shown_in(book.settings))
    return render(request, "pages/wool_book/way.html", page)


@router.post("/{holding_id}/looked")
def looked(request: Request, session: WritingSession, holding_id: str) -> Response:
    holding = looked_at(session, holding_id, date.today())
    if holding is None:
        raise Missing("This wool")
    again = shown_in(settings_of_request(request)).day(holding.look_again or date.today())
    message = f"{holding.code} was looked at. Today asks again on {again}."
    return after_save(request, "/", message)


def _ask(
    request: Request, session: ReadingSession, seq: int, form: Filled, status: int = 200
) -> Response:
    found = read_events(session, seq + 1, only_corrections=False)
    if not found.events or found.events[0].seq != seq:
        raise Missing("This event")
    page = wool_undo_page(found, form, shown_in(settings_of_request(request)))
    return render(request, UNDO, page, status)


def _number(typed: str) -> int | None:
    return int(typed) if typed.isascii() and typed.isdecimal() and len(typed) < 16 else None
