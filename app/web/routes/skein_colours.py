"""How the colour of a skein runs along it: asked, and kept."""

from fastapi import APIRouter, Request, Response

from app.book.stamp import stamp
from app.web.errors import Stale
from app.web.forms.filled import Filled
from app.web.forms.reader import Posted
from app.web.forms.skein_colours import colours_values, read_colours
from app.web.pages.skein_colours import skein_colours_page
from app.web.routes.skein_tend import skein_or_missing
from app.web.session import ReadingSession, WritingSession
from app.web.templating import after_save, render
from app.work.reckoning import current
from app.work.skein_colours import keep_colours

router = APIRouter(prefix="/skeins/{skein_id}/colours")

PAGE = "pages/skeins/colours.html"


@router.get("")
def ask(request: Request, session: ReadingSession, skein_id: str) -> Response:
    skein, book = skein_or_missing(session, skein_id), current(session).book
    promises = [one for one in book.promises if one.holding_id == skein_id]
    form = Filled(colours_values(skein, book.settings, promises), {}, stamp(skein))
    return render(request, PAGE, skein_colours_page(book, skein, form))


@router.post("")
def keep(request: Request, session: WritingSession, posted: Posted, skein_id: str) -> Response:
    skein, book = skein_or_missing(session, skein_id), current(session).book
    promises = [one for one in book.promises if one.holding_id == skein_id]
    reader, typed = read_colours(posted, book.settings, promises)
    if reader.stamp != stamp(skein):
        raise Stale(skein.code, f"/skeins/{skein_id}")
    if not reader.ok:
        page = skein_colours_page(book, skein, reader.filled())
        return render(request, PAGE, page, status=422)
    keep_colours(session, skein, typed.colours, typed.inside)
    told = "its colours along the yarn are noted" if typed.colours else "it is of one colour"
    return after_save(request, f"/skeins/{skein_id}", f"{skein.code}: {told}.")
