"""Work on wool that is more than a weighing: blending lots, dyeing a skein."""

from datetime import date

from fastapi import APIRouter, Request, Response

from app.store.skein_find import balance_of
from app.web.forms.blend_lots import blend_lot_values, read_blend_of
from app.web.forms.dye import dye_values, read_dyeing
from app.web.forms.filled import Filled
from app.web.forms.reader import Posted, Reader
from app.web.forms.yarn import colour_kept
from app.web.pages.batches import blend_page, blended_said, dye_page
from app.web.routes.skein_tend import as_opened, skein_or_missing
from app.web.session import ReadingSession, WritingSession, settings_of_request
from app.web.templating import after_save, render, shown_in
from app.work.batch_blend import blend, lots_of
from app.work.batch_dye import dye_skein
from app.work.reckoning import current
from app.work.refusal import Refusal

router = APIRouter()

BLEND, DYE = "pages/fleeces/blend.html", "pages/skeins/dye.html"


@router.get("/fleeces/blend")
def ask_blend(request: Request, session: ReadingSession, wool: str = "") -> Response:
    book = current(session).book
    lots = lots_of(book)
    form = blend_lot_values(date.today(), lots, wool)
    return render(request, BLEND, blend_page(book, lots, form, shown_in(book.settings)))


@router.post("/fleeces/blend")
def make_blend(request: Request, session: WritingSession, posted: Posted) -> Response:
    book = current(session).book
    lots, shown = lots_of(book), shown_in(book.settings)
    reader = Reader(posted, book.settings)
    new = read_blend_of(reader, book, lots, date.today())
    try:
        done = blend(session, new) if reader.ok else None
    except Refusal as refusal:
        reader.refuse(refusal.field, refusal.message)
        done = None
    if done is None:
        page = blend_page(book, lots, reader.filled(**colour_kept(reader)), shown)
        return render(request, BLEND, page, status=422)
    message = blended_said(done, shown)
    return after_save(request, f"/fleeces/{done.fleece.id}", message, undo=done.event.seq)


@router.get("/skeins/{skein_id}/dye")
def ask_dye(request: Request, session: ReadingSession, skein_id: str) -> Response:
    form = Filled(dye_values(skein_or_missing(session, skein_id), date.today()))
    return _dye_page(request, session, skein_id, form)


@router.post("/skeins/{skein_id}/dye")
def dye(request: Request, session: WritingSession, posted: Posted, skein_id: str) -> Response:
    skein = skein_or_missing(session, skein_id)
    reader = Reader(posted, settings_of_request(request))
    as_opened(skein, reader)
    dyeing = read_dyeing(reader, date.today())
    if not reader.ok:
        form = reader.filled(**colour_kept(reader))
        return _dye_page(request, session, skein_id, form, status=422)
    event = dye_skein(session, skein, dyeing)
    named = f" {dyeing.colour_name}" if dyeing.colour_name else ""
    return after_save(request, f"/skeins/{skein_id}", f"{skein.code} is dyed{named}.", event.seq)


def _dye_page(
    request: Request, session: ReadingSession, skein_id: str, form: Filled, status: int = 200
) -> Response:
    skein, held = skein_or_missing(session, skein_id), balance_of(session, skein_id)
    said = shown_in(settings_of_request(request)).mass(held.mg / 1000)
    return render(request, DYE, dye_page(skein, said, form), status)
