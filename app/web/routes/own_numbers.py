"""Your own numbers: what is learned, and which measurements it is learned from."""

from datetime import date
from typing import get_args

from fastapi import APIRouter, Request, Response

from app.book.words import Verdict
from app.web.errors import Missing
from app.web.forms.reader import Posted
from app.web.pages.own_numbers import own_numbers_page
from app.web.session import ReadingSession, WritingSession
from app.web.templating import after_save, render, shown_in
from app.work.mark_set import set_mark
from app.work.reckoning import current

router = APIRouter()

PAGE = "/settings/own-numbers"
SAID = {"struck out": "Struck out", "let in": "Let in", None: "As it came"}


@router.get(PAGE)
def show(request: Request, session: ReadingSession) -> Response:
    known = current(session)
    page = own_numbers_page(known.reckoning.learnt, shown_in(known.book.settings))
    return render(request, "pages/settings/own_numbers.html", page)


@router.post("/settings/own-numbers/mark")
def mark(request: Request, session: WritingSession, posted: Posted) -> Response:
    asked = posted.get("verdict")
    verdict = next((one for one in get_args(Verdict) if one == asked), None)
    try:
        found = set_mark(session, str(posted.get("key")), verdict, date.today())
    except KeyError:
        raise Missing("This measurement") from None
    return after_save(request, PAGE, f"{SAID[verdict]}: {found.what}.")
