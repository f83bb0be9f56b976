"""A skein is finished: reeled, weighed, washed, reeled again, and promised where it was wanted."""

from fastapi import APIRouter, Request, Response

from app.book.book import Book
from app.store.records import load_book
from app.store.skein_find import balance_of
from app.web.forms.filled import Filled
from app.web.forms.reader import Posted
from app.web.forms.skein_finish import finish_values, read_finished, read_washed
from app.web.forms.skein_yarn import NEW
from app.web.forms.yarn import colour_kept
from app.web.pages.skein_finish import finish_page, finished_said, wanted_said
from app.web.pages.skein_said import too_little_said
from app.web.routes.skein_add import beside
from app.web.routes.skein_tend import as_opened, skein_or_missing
from app.web.session import ReadingSession, WritingSession
from app.web.templating import after_save, render, shown_in
from app.work.reckoning import current
from app.work.refusal import Refusal
from app.work.skein_finish import Finished, asking_for, finish_new, finish_old
from app.work.skein_spin import TooLittleWool
from app.work.undo_records import remember

router = APIRouter(prefix="/skeins")

FORM = "pages/skeins/finish.html"


@router.get("/finish")
def ask_new(
    request: Request, session: ReadingSession, yarn: str = "", fleece: str = "", plan: str = ""
) -> Response:
    known = current(session)
    book = known.book
    chosen = book.yarn.get(yarn)
    wanting = plan if plan in book.plan else asking_for(known.reckoning.plans, yarn)
    form = finish_values(
        book.settings,
        yarn=yarn if chosen else NEW,
        fleece=fleece if fleece in book.fleece else (chosen and chosen.fleece_id) or "",
        plan=wanting or "",
    )
    wanted = wanted_said(book, yarn, wanting)
    return render(request, FORM, finish_page(book, Filled(form), wanted))


@router.post("/finish")
def finish(request: Request, session: WritingSession, posted: Posted) -> Response:
    book = current(session).book
    reader, skein, plan_id = read_finished(posted, book.settings, book)
    if reader.ok:
        try:
            done = finish_new(session, skein, plan_id)
        except Refusal as refusal:
            reader.refuse(beside(refusal), refusal.message)
        except TooLittleWool as lack:
            reader.refuse("fleece", too_little_said(lack, shown_in(book.settings)))
        else:
            return _after(request, session, book, done, plan_id)
    wanted = wanted_said(book, reader.typed("yarn"), plan_id)
    page = finish_page(book, reader.filled(**colour_kept(reader)), wanted)
    return render(request, FORM, page, status=422)


@router.get("/{skein_id}/finish")
def ask_old(request: Request, session: ReadingSession, skein_id: str) -> Response:
    known = current(session)
    skein = skein_or_missing(session, skein_id)
    promised = next((one.plan_id for one in known.book.promises if one.holding_id == skein_id), "")
    plan = promised or asking_for(known.reckoning.plans, skein.yarn_id or "") or ""
    form = Filled(finish_values(known.book.settings, plan=plan))
    return _old_page(request, session, known.book, skein_id, form)


@router.post("/{skein_id}/finish")
def finish_washed(
    request: Request, session: WritingSession, posted: Posted, skein_id: str
) -> Response:
    book = current(session).book
    skein = skein_or_missing(session, skein_id)
    held = balance_of(session, skein_id)
    reader, weighing, plan_id = read_washed(posted, book.settings, book, held)
    as_opened(skein, reader)
    if not reader.ok:
        return _old_page(request, session, book, skein_id, reader.filled(), 422)
    done = finish_old(session, skein, weighing, plan_id)
    return _after(request, session, book, done, plan_id)


def _after(
    request: Request, session: WritingSession, was: Book, done: Finished, plan_id: str | None
) -> Response:
    book = load_book(session)
    held = balance_of(session, done.skein.id)
    message = finished_said(done, held, book, shown_in(book.settings))
    url = f"/garments/{plan_id}" if plan_id else f"/skeins/{done.skein.id}"
    return after_save(request, url, message, remember(session, was, message))


def _old_page(
    request: Request,
    session: ReadingSession,
    book: Book,
    skein_id: str,
    form: Filled,
    status: int = 200,
) -> Response:
    skein, held = skein_or_missing(session, skein_id), balance_of(session, skein_id)
    shown = shown_in(book.settings)
    said = f"{shown.length(held.mm / 1000)}, {shown.mass(held.mg / 1000)}"
    plan = form.values.get("plan", "")
    wanted = wanted_said(book, skein.yarn_id or "", plan)
    return render(request, FORM, finish_page(book, form, wanted, skein, said), status)
