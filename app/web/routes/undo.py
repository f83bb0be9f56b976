"""Undo: an event is taken back by a counter-event, a change of records by what they were."""

from datetime import date
from urllib.parse import urlsplit

from fastapi import APIRouter, Request, Response

from app.book.errors import WoolBookError
from app.web.errors import Missing, NotNow
from app.web.forms.reader import Posted
from app.web.session import WritingSession
from app.web.templating import after_save
from app.work.event_undo import undo_event
from app.work.undo_records import undo_change

router = APIRouter()


@router.post("/undo/{seq}")
def undo(request: Request, session: WritingSession, posted: Posted, seq: int) -> Response:
    back = own_path(posted.get("back"))
    try:
        event = undo_event(session, seq, date.today())
    except WoolBookError as error:
        raise NotNow(str(error), back) from error
    if event is None:
        raise Missing("What was to be undone")
    return after_save(request, back, "Undone.")


@router.post("/undo/change/{key}")
def undo_records(request: Request, session: WritingSession, posted: Posted, key: str) -> Response:
    back = own_path(posted.get("back"))
    try:
        change = undo_change(session, key, date.today())
    except WoolBookError as error:
        raise NotNow(str(error), back) from error
    return after_save(request, back, f"Undone: {change.words}")


def own_path(typed: object) -> str:
    """A path of this program, or the front page for anything else."""
    if not isinstance(typed, str) or not typed.startswith("/") or "\\" in typed:
        return "/"
    parts = urlsplit(typed)
    away = parts.scheme or parts.netloc or typed.startswith("//")
    return "/" if away or not typed.isprintable() else typed
