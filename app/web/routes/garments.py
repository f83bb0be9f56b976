"""The list of garments and the plan of each: see, add, change, put in order, print."""

from datetime import date

from fastapi import APIRouter, Request, Response

from app.book.plan import Plan
from app.book.stamp import stamp
from app.book.words import OPEN_STATES
from app.store.records import load_book
from app.web.forms.gauge_swatch import swatches_offered
from app.web.forms.options import names_by_id
from app.web.forms.plan import plan_values, read_plan
from app.web.forms.reader import Posted
from app.web.garment_shown import plan_or_missing, said_with, show_garment
from app.web.pages.garment_form import new_plan_page, plan_form_page
from app.web.pages.garment_sheet import sheet_page
from app.web.pages.garments import garments_page
from app.web.session import ReadingSession, WritingSession
from app.web.templating import after_save, render, shown_in
from app.work.plan_effect import save_and_tell
from app.work.plan_order import move_plan
from app.work.plan_save import add_plan, change_plan
from app.work.reckoning import current
from app.work.undo_records import remember

router = APIRouter()

LIST = "pages/garments/list.html"
FORM = "pages/garments/plan_form.html"
SHEET = "print/garment.html"


@router.get("/garments")
def show_list(request: Request, session: ReadingSession) -> Response:
    known = current(session)
    shown = shown_in(known.book.settings)
    return render(request, LIST, garments_page(known.book, known.reckoning, shown))


@router.get("/garments/new")
def ask_new(request: Request, session: ReadingSession, swatch: str = "") -> Response:
    return render(request, FORM, new_plan_page(load_book(session), swatch))


@router.post("/garments/new")
def add(request: Request, session: WritingSession, posted: Posted) -> Response:
    book = load_book(session)
    people, yarns = names_by_id(book.people), names_by_id(book.yarns)
    reader, plan = read_plan(posted, book.settings, people, yarns, swatches_offered(book, None))
    if not reader.ok:
        page = plan_form_page(book, None, reader.filled())
        return render(request, FORM, page, status=422)
    add_plan(session, plan)
    message = f"{plan.name} is planned. Now add its parts."
    return after_save(request, f"/garments/{plan.id}", message)


@router.get("/garments/{plan_id}")
def show(
    request: Request, session: ReadingSession, plan_id: str, put: str | None = None
) -> Response:
    plan_or_missing(session, plan_id)
    return show_garment(request, session, plan_id, put)


@router.get("/garments/{plan_id}/change")
def ask_change(request: Request, session: ReadingSession, plan_id: str) -> Response:
    plan = plan_or_missing(session, plan_id)
    return render(request, FORM, plan_form_page(load_book(session), plan))


@router.post("/garments/{plan_id}/change")
def change(request: Request, session: WritingSession, posted: Posted, plan_id: str) -> Response:
    old = plan_or_missing(session, plan_id)
    book = load_book(session)
    people, yarns = names_by_id(book.people), names_by_id(book.yarns)
    offered = swatches_offered(book, old)
    reader, plan = read_plan(posted, book.settings, people, yarns, offered, old)
    if reader.stamp != stamp(old):
        words = {**people, **yarns, **names_by_id(offered.values())}
        form = reader.over(plan_values(old, book.settings), stamp(old), words)
        return render(request, FORM, plan_form_page(book, old, form), status=409)
    if not reader.ok:
        page = plan_form_page(book, old, reader.filled())
        return render(request, FORM, page, status=422)
    freed, effect = save_and_tell(session, plan_id, lambda: change_plan(session, plan))
    message = said_with(f"{plan.name} is changed.{_also(old, plan, freed)}", effect, book)
    undo = remember(session, book, message)
    return after_save(request, f"/garments/{plan_id}", message, undo)


def _also(old: Plan, plan: Plan, freed: int) -> str:
    if freed:
        return " What was promised to it is free again."
    if old.state not in OPEN_STATES and plan.state in OPEN_STATES:
        return (
            " Skeins that were promised to it before are not promised again, and yarn noted as "
            "used stays noted."
        )
    return ""


@router.post("/garments/{plan_id}/move")
def move(request: Request, session: WritingSession, posted: Posted, plan_id: str) -> Response:
    plan = plan_or_missing(session, plan_id)
    where = "later" if posted.get("to") == "later" else "earlier"
    if move_plan(session, plan_id, where == "earlier"):
        message = f"{plan.name} is served {where} from the shelf now."
    else:
        message = f"{plan.name} cannot be served {where} than it is."
    return after_save(request, "/garments", message)


@router.get("/garments/{plan_id}/print")
def print_sheet(request: Request, session: ReadingSession, plan_id: str) -> Response:
    plan_or_missing(session, plan_id)
    known = current(session)
    shown = shown_in(known.book.settings)
    return render(request, SHEET, sheet_page(known, shown, plan_id, date.today()))
