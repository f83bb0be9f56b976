"""The form that pairs a device on the home network."""

from datetime import date

from fastapi import APIRouter, Request, Response
from fastapi.responses import RedirectResponse

from app.web.errors import Missing
from app.web.forms.filled import Filled
from app.web.forms.reader import Posted, Reader
from app.web.pages.devices import PairPage
from app.web.session import WritingSession
from app.web.sharing import COOKIE, COOKIE_S, Sharing
from app.web.templating import render
from app.work.device_pair import pair_device
from app.work.settings_read import settings_now

router = APIRouter()

FORM = "pages/pair.html"


@router.get("/pair")
def ask(request: Request, code: str = "") -> Response:
    sharing_or_missing(request)
    return render(request, FORM, PairPage(Filled({"code": code[:40]})))


@router.post("/pair")
def pair(request: Request, session: WritingSession, posted: Posted) -> Response:
    sharing = sharing_or_missing(request)
    reader = Reader(posted, settings_now(session))
    name = reader.text("name", required=True, longest=40)
    code = reader.text("code", required=True, longest=40)
    wait = sharing.wait_s()
    if reader.ok and not sharing.guess(code):
        reader.refuse("code", _refused(wait))
    if not reader.ok:
        return render(request, FORM, PairPage(reader.filled()), 429 if wait else 422)
    answer = RedirectResponse("/", 303)
    answer.set_cookie(
        COOKIE,
        pair_device(session, name, date.today()),
        max_age=COOKIE_S,
        httponly=True,
        samesite="strict",
    )
    return answer


def sharing_or_missing(request: Request) -> Sharing:
    """How the book is shared; Missing where it is not."""
    sharing: Sharing | None = getattr(request.app.state, "sharing", None)
    if sharing is None:
        raise Missing("This page")
    return sharing


def _refused(wait_s: float) -> str:
    if wait_s >= 60:
        minutes = round(wait_s / 60 + 0.5)
        return f"There were too many wrong codes. Wait {minutes} minutes, then try again."
    if wait_s:
        return "That was too quick after a wrong code. Wait some seconds, then try again."
    return "This is not the code. Look at it again on the computer: under Settings, Phone."
