"""Labels for skeins and bags of wool, to be printed true to size."""

from fastapi import APIRouter, Request, Response
from sqlmodel import Session

from app.craft.label_sheets import sheet_of
from app.store.skein_list import skein_ids
from app.web.errors import Missing
from app.web.forms.labels import MOST, LabelsAsked, read_labels
from app.web.pages.labels import labels_page
from app.web.session import ReadingSession, settings_of_request
from app.web.sharing import Sharing
from app.web.templating import draw, render, shown_in
from app.work.label_make import in_order_of_codes, labels_of, wool_to_label
from app.work.reckoning import Known, current

router = APIRouter()


@router.get("/labels")
def show(request: Request, session: ReadingSession) -> Response:
    known = current(session)
    settings = settings_of_request(request)
    reader, asked = read_labels(request.query_params, settings)
    ids = _ids(session, known, asked)
    origin = _origin(request)
    labels = labels_of(known, ids[:MOST])
    page = labels_page(reader, asked, labels, max(0, len(ids) - MOST), origin, shown_in(settings))
    status = 200 if reader.ok else 422
    return render(request, "pages/labels/labels.html", page, status=status)


@router.get("/labels/sheet/{key}.css")
def measures(key: str) -> Response:
    """The measures of a sheet as a style sheet: the policy allows none within a page."""
    sheet = sheet_of(key)
    if sheet is None:
        raise Missing("This sheet of labels")
    return Response(draw("print/label_sheet.css", {"sheet": sheet}), media_type="text/css")


def _origin(request: Request) -> str:
    """The address in the codes: one that a phone can reach, where the book is shared."""
    sharing: Sharing | None = getattr(request.app.state, "sharing", None)
    own = sharing.addresses[0] if sharing else str(request.base_url)
    return own.rstrip("/")


def _ids(session: Session, known: Known, asked: LabelsAsked) -> tuple[str, ...]:
    if asked.ids is not None:
        return asked.ids
    if asked.wool:
        return wool_to_label(known.book, asked.fleece)
    return in_order_of_codes(known.book, skein_ids(session, asked.wanted))
