"""The skeins: the list, and one skein with what can be done to it."""

from fastapi import APIRouter, Request, Response

from app.web.errors import Missing
from app.web.forms.skein_filter import read_filter
from app.web.pages.skein import skein_page
from app.web.pages.skeins import skeins_page
from app.web.session import ReadingSession, settings_of_request
from app.web.templating import render, shown_in
from app.work.reckoning import current
from app.work.skein_browse import browse
from app.work.skein_known import known_skein

router = APIRouter()


@router.get("/skeins")
def list_skeins(request: Request, session: ReadingSession) -> Response:
    settings = settings_of_request(request)
    reader, wanted = read_filter(request.query_params, settings)
    page = skeins_page(reader, wanted, browse(session, wanted), shown_in(settings))
    status = 200 if reader.ok else 422
    return render(request, "pages/skeins/list.html", page, status=status, block="list")


@router.get("/skeins/{skein_id}")
def show_skein(request: Request, session: ReadingSession, skein_id: str) -> Response:
    known = current(session)
    found = known_skein(known, skein_id)
    if found is None:
        raise Missing("This skein")
    page = skein_page(known, found, shown_in(known.book.settings))
    return render(request, "pages/skeins/skein.html", page)
