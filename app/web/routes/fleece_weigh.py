"""A fleece is weighed, or leaves the shelf."""

from datetime import date

from fastapi import APIRouter, Request, Response

from app.web.errors import NotNow
from app.web.fleece_shown import as_opened, fleece_or_missing
from app.web.forms.filled import Filled
from app.web.forms.fleece import GOING
from app.web.forms.fleece_weigh import read_wool_weighing, weighing_values
from app.web.forms.reader import Posted, Reader
from app.web.pages.fleece_form import weigh_page
from app.web.pages.weighed import weighed_told
from app.web.session import ReadingSession, WritingSession
from app.web.templating import after_save, render, shown_in
from app.work.fleece_find import KnownFleece, Wool
from app.work.fleece_put_away import put_away_fleece
from app.work.fleece_weigh import weigh_fleece
from app.work.reckoning import Known, current

router = APIRouter()


@router.get("/fleeces/{fleece_id}/weigh")
def ask_weigh(
    request: Request, session: ReadingSession, fleece_id: str, wool: str = "", taken: str = ""
) -> Response:
    known = current(session)
    found = _on_shelf(known, fleece_id)
    chosen = _wool_of(found, wool)
    form = weighing_values(found.fleece, chosen, taken, date.today())
    return _weigh_form(request, known, found, chosen, form)


@router.post("/fleeces/{fleece_id}/weigh")
def weigh(request: Request, session: WritingSession, posted: Posted, fleece_id: str) -> Response:
    known = current(session)
    found = _on_shelf(known, fleece_id)
    reader = Reader(posted, known.book.settings)
    wool = _wool_of(found, reader.typed("wool"))
    as_opened(found, reader.stamp, wool.holding)
    weighing = read_wool_weighing(reader, found.fleece, wool, known.book, date.today())
    if not reader.ok:
        return _weigh_form(request, known, found, wool, reader.filled(), status=422)
    weighed = weigh_fleece(session, wool.holding, weighing)
    message = weighed_told(found, wool, weighing, weighed, known.book)
    undo = weighed.event.seq if weighed.event else None
    return after_save(request, f"/fleeces/{fleece_id}", message, undo)


@router.post("/fleeces/{fleece_id}/put-away")
def put_away(request: Request, session: WritingSession, posted: Posted, fleece_id: str) -> Response:
    known = current(session)
    found = _on_shelf(known, fleece_id)
    reader = Reader(posted, known.book.settings)
    as_opened(found, reader.stamp)
    going = reader.choice("going", GOING, default="used up") or "used up"
    wool = {one.holding.id: one.holding for one in found.wool} | {found.holding.id: found.holding}
    event = put_away_fleece(session, tuple(wool.values()), going, date.today())
    return after_save(request, "/fleeces", f"{found.fleece.name} is put away.", undo=event.seq)


def _on_shelf(known: Known, fleece_id: str) -> KnownFleece:
    found = fleece_or_missing(known, fleece_id)
    if found.holding.put_away is not None:
        back = f"/fleeces/{fleece_id}"
        raise NotNow(f"{found.fleece.name} is put away. Undo that first.", back)
    return found


def _wool_of(found: KnownFleece, holding_id: str) -> Wool:
    """The wool to be weighed: the one asked for, else what is nearest to the sheep."""
    asked = (one for one in found.wool if one.holding.id == holding_id)
    return next(asked, found.wool[0])


def _weigh_form(
    request: Request, known: Known, found: KnownFleece, wool: Wool, form: Filled, status: int = 200
) -> Response:
    page = weigh_page(found, wool, form, shown_in(known.book.settings))
    return render(request, "pages/fleeces/weigh.html", page, status)
