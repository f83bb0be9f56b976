"""What can be done to a skein on the shelf: weigh, measure, change, put away."""

from fastapi import APIRouter, Request, Response
from sqlmodel import Session

from app.book.holding import Holding
from app.book.stamp import stamp
from app.book.words import YARN_KINDS
from app.store.records import get
from app.store.skein_find import balance_of
from app.web.errors import Missing, Stale
from app.web.forms.filled import Filled
from app.web.forms.options import names_by_id, with_none
from app.web.forms.reader import Posted, Reader
from app.web.forms.skein_change import change_values, read_change
from app.web.forms.skein_weigh import read_going, read_weighing, weighing_values
from app.web.forms.yarn import colour_kept
from app.web.pages.skein_forms import skein_form_page
from app.web.session import ReadingSession, WritingSession, settings_of_request
from app.web.templating import after_save, render
from app.work.reckoning import current
from app.work.refusal import Refusal
from app.work.skein_change import change_skein
from app.work.skein_measure import measure_again
from app.work.skein_put_away import put_away

router = APIRouter(prefix="/skeins/{skein_id}")

WEIGH, CHANGE, AWAY = (f"pages/skeins/{name}.html" for name in ("weigh", "change", "put_away"))


@router.get("/weigh")
def ask_weigh(request: Request, session: ReadingSession, skein_id: str) -> Response:
    form = Filled(weighing_values(settings_of_request(request)))
    return render(request, WEIGH, skein_form_page(skein_or_missing(session, skein_id), form))


@router.post("/weigh")
def weigh(request: Request, session: WritingSession, posted: Posted, skein_id: str) -> Response:
    skein = skein_or_missing(session, skein_id)
    held = balance_of(session, skein_id)
    reader, weighing = read_weighing(posted, settings_of_request(request), held)
    as_opened(skein, reader)
    if not reader.ok:
        return render(request, WEIGH, skein_form_page(skein, reader.filled()), status=422)
    event = measure_again(session, skein, weighing)
    moved = "the book follows it" if event else "the book stays as it is"
    message = f"{skein.code}: the reading is kept, and {moved}."
    return after_save(request, f"/skeins/{skein_id}", message, event.seq if event else None)


@router.get("/change")
def ask_change(request: Request, session: ReadingSession, skein_id: str) -> Response:
    skein = skein_or_missing(session, skein_id)
    yarns = _yarns(session, skein)
    return render(request, CHANGE, skein_form_page(skein, Filled(change_values(skein)), yarns))


@router.post("/change")
def change(request: Request, session: WritingSession, posted: Posted, skein_id: str) -> Response:
    old = skein_or_missing(session, skein_id)
    book = current(session).book
    reader, skein = read_change(posted, book.settings, book, old)
    as_opened(old, reader)
    if reader.ok:
        try:
            change_skein(session, skein)
        except Refusal as refusal:
            reader.refuse(refusal.field, refusal.message)
        else:
            return after_save(request, f"/skeins/{skein_id}", f"{skein.code} is changed.")
    form = reader.filled(**colour_kept(reader))
    page = skein_form_page(old, form, _yarns(session, old))
    return render(request, CHANGE, page, status=422)


@router.get("/put-away")
def ask_put_away(request: Request, session: ReadingSession, skein_id: str) -> Response:
    form = Filled({**weighing_values(settings_of_request(request)), "going": "given away"})
    return render(request, AWAY, skein_form_page(skein_or_missing(session, skein_id), form))


@router.post("/put-away")
def send_away(request: Request, session: WritingSession, posted: Posted, skein_id: str) -> Response:
    skein = skein_or_missing(session, skein_id)
    reader, going, day = read_going(posted, settings_of_request(request))
    as_opened(skein, reader)
    if not reader.ok:
        return render(request, AWAY, skein_form_page(skein, reader.filled()), status=422)
    event = put_away(session, skein, going, day)
    return after_save(request, f"/skeins/{skein_id}", f"{skein.code} is put away.", event.seq)


def skein_or_missing(session: Session, skein_id: str) -> Holding:
    """The skein, ball or left-over at an address; Missing where there is none."""
    skein = get(session, Holding, skein_id)
    if skein is None or skein.kind not in YARN_KINDS:
        raise Missing("This skein")
    return skein


def as_opened(skein: Holding, reader: Reader) -> None:
    """Stale where the skein was changed since the form was opened."""
    if reader.stamp != stamp(skein):
        raise Stale(skein.code, f"/skeins/{skein.id}")


def _yarns(session: Session, skein: Holding) -> dict[str, str]:
    names = names_by_id(current(session).book.yarns)
    return names if skein.yarn_id else with_none("not noted", names)
