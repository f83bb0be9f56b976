"""Wool that dries is weighed, again and again, and entered once it is dry."""

from datetime import datetime

from fastapi import APIRouter, Request, Response

from app.planning.drying import Drying, damp_weighings, drying
from app.web.errors import NotNow
from app.web.fleece_shown import as_opened, fleece_or_missing
from app.web.forms.drying import drying_values, read_drying
from app.web.forms.filled import Filled
from app.web.forms.reader import Posted, Reader
from app.web.pages.drying import dry_url, drying_page, drying_told
from app.web.pages.weighed import dried_doubted, weighed_told
from app.web.session import ReadingSession, WritingSession
from app.web.shown import as_typed
from app.web.templating import after_save, render, shown_in
from app.work.fleece_dried import doubt_when_dry, dried, state_when_dry, take_out_last
from app.work.fleece_find import KnownFleece, Wool
from app.work.fleece_weigh import weigh_fleece
from app.work.reckoning import Known, current

router = APIRouter(prefix="/fleeces/{fleece_id}/dry")


@router.get("")
def ask(request: Request, session: ReadingSession, fleece_id: str, wool: str = "") -> Response:
    known = current(session)
    found = fleece_or_missing(known, fleece_id)
    lying = _lying(known, found, wool)
    form = drying_values(found.fleece, lying.holding, datetime.now())
    return _page(request, known, found, lying, form)


@router.post("")
def weigh(request: Request, session: WritingSession, posted: Posted, fleece_id: str) -> Response:
    known = current(session)
    found = fleece_or_missing(known, fleece_id)
    reader = Reader(posted, known.book.settings)
    lying = _lying(known, found, reader.typed("wool"))
    as_opened(found, reader.stamp, lying.holding)
    weighing = read_drying(reader, datetime.now())
    if not reader.ok:
        return _page(request, known, found, lying, reader.filled(), status=422)
    weigh_fleece(session, lying.holding, weighing)
    now = drying(current(session).book, lying.holding)
    said = drying_told(now, shown_in(known.book.settings)) if now else ""
    return after_save(request, dry_url(fleece_id, lying.holding.id), f"Kept. {said}")


@router.post("/done")
def enter_dry(
    request: Request, session: WritingSession, posted: Posted, fleece_id: str
) -> Response:
    known = current(session)
    found = fleece_or_missing(known, fleece_id)
    reader = Reader(posted, known.book.settings)
    lying = _lying(known, found, reader.typed("wool"))
    as_opened(found, reader.stamp, lying.holding)
    weighing = dried(known.book, lying.holding, datetime.now().date())
    if weighing is None:
        raise NotNow("Weigh it first.", dry_url(fleece_id, lying.holding.id))
    doubt = doubt_when_dry(known.book, found.fleece, lying, weighing)
    shown = shown_in(known.book.settings)
    if doubt and not reader.flag("sure"):
        reader.refuse("sure", dried_doubted(doubt, lying, weighing, shown))
        return _page(request, known, found, lying, reader.filled(), status=422)
    weighed = weigh_fleece(session, lying.holding, weighing)
    wool = _wool(found, lying)
    said = weighed_told(found, wool, weighing, weighed, known.book)
    undo = weighed.event.seq if weighed.event else None
    return after_save(request, f"/fleeces/{fleece_id}", said, undo)


@router.post("/take-out")
def take_out(request: Request, session: WritingSession, posted: Posted, fleece_id: str) -> Response:
    known = current(session)
    found = fleece_or_missing(known, fleece_id)
    reader = Reader(posted, known.book.settings)
    lying = _lying(known, found, reader.typed("wool"))
    as_opened(found, reader.stamp, lying.holding)
    taken = take_out_last(session, known.book, lying.holding)
    said = f"Taken out: {as_typed(taken.typed, taken.unit)}." if taken else "There was no weighing."
    return after_save(request, dry_url(fleece_id, lying.holding.id), said)


def _lying(known: Known, found: KnownFleece, holding_id: str) -> Drying:
    """The wool that dries: the one asked for, else the first; NotNow where none does."""
    lying = [one for wool in found.wool if (one := drying(known.book, wool.holding))]
    asked = (one for one in lying if one.holding.id == holding_id)
    one = next(asked, lying[0] if lying else None)
    if one is None or found.holding.put_away is not None:
        message = f"Nothing of {found.fleece.name} lies drying."
        raise NotNow(message, f"/fleeces/{found.fleece.id}")
    return one


def _wool(found: KnownFleece, lying: Drying) -> Wool:
    return next(one for one in found.wool if one.holding.id == lying.holding.id)


def _page(
    request: Request,
    known: Known,
    found: KnownFleece,
    lying: Drying,
    form: Filled,
    status: int = 200,
) -> Response:
    page = drying_page(
        fleece_id=found.fleece.id,
        name=found.fleece.name,
        one=lying,
        becomes=state_when_dry(known.book, lying.holding),
        readings=damp_weighings(known.book, lying.holding),
        form=form,
        shown=shown_in(known.book.settings),
    )
    return render(request, "pages/fleeces/dry.html", page, status)
