"""Skeins come to the shelf: spun, or bought several alike at once."""

from fastapi import APIRouter, Request, Response
from starlette.datastructures import QueryParams

from app.book.book import Book
from app.book.plan import Plan
from app.store.records import get
from app.web.forms.filled import Filled
from app.web.forms.reader import Posted, Reader
from app.web.forms.skein import read_skein, skein_values
from app.web.forms.skein_bought import bought_values, read_bought
from app.web.forms.skein_yarn import NEW
from app.web.forms.yarn import colour_kept
from app.web.pages.skein_forms import new_skein_page
from app.web.pages.skein_said import bought_said, came_said, too_little_said
from app.web.session import ReadingSession, WritingSession
from app.web.templating import after_save, render, shown_in
from app.work.reckoning import current
from app.work.refusal import Refusal
from app.work.skein_add import Saved, add_skein, proposed_codes
from app.work.skein_buy import buy_balls
from app.work.skein_spin import TooLittleWool

router = APIRouter()

NEW_FORM = "pages/skeins/new.html"
BOUGHT_FORM = "pages/skeins/bought.html"


@router.get("/skeins/new")
def ask_new(request: Request, session: ReadingSession) -> Response:
    book = current(session).book
    chosen = _chosen(request.query_params, book)
    if chosen["yarn"] in book.yarn:
        chosen["code"] = proposed_codes(session, book.yarn[chosen["yarn"]])[0]
    form = Filled(skein_values(book.settings, **chosen))
    return render(request, NEW_FORM, new_skein_page(book, form))


@router.post("/skeins/new")
def add(request: Request, session: WritingSession, posted: Posted) -> Response:
    book = current(session).book
    shown = shown_in(book.settings)
    reader, skein = read_skein(posted, book.settings, book)
    if reader.ok:
        try:
            saved = add_skein(session, skein)
        except Refusal as refusal:
            reader.refuse(beside(refusal), refusal.message)
        except TooLittleWool as lack:
            reader.refuse("fleece", too_little_said(lack, shown))
        else:
            return _after(request, session, reader, saved, came_said(skein, saved, shown))
    page = new_skein_page(book, reader.filled(**colour_kept(reader)))
    return render(request, NEW_FORM, page, status=422)


@router.get("/skeins/bought")
def ask_bought(request: Request, session: ReadingSession) -> Response:
    book = current(session).book
    form = Filled(bought_values(**_chosen(request.query_params, book)))
    return render(request, BOUGHT_FORM, new_skein_page(book, form))


@router.post("/skeins/bought")
def buy(request: Request, session: WritingSession, posted: Posted) -> Response:
    book = current(session).book
    reader, balls = read_bought(posted, book.settings, book)
    if reader.ok:
        try:
            saved = buy_balls(session, balls)
        except Refusal as refusal:
            reader.refuse(beside(refusal), refusal.message)
        else:
            return _after(request, session, reader, saved, bought_said(saved))
    page = new_skein_page(book, reader.filled(**colour_kept(reader)))
    return render(request, BOUGHT_FORM, page, status=422)


def _chosen(asked: QueryParams, book: Book) -> dict[str, str]:
    """The yarn, fleece and garment an address asks for, as far as they are in the book."""
    yarn, fleece, plan = (asked.get(name, "") for name in ("yarn", "fleece", "plan"))
    if not fleece and yarn in book.yarn:
        fleece = book.yarn[yarn].fleece_id or ""
    return {
        "yarn": yarn if yarn in book.yarn else NEW,
        "fleece": fleece if fleece in book.fleece else "",
        "plan": plan if plan in book.plan else "",
    }


def beside(refusal: Refusal) -> str:
    """The field of a refusal: a yarn's name stands in one of its own on the form of a skein."""
    return "yarn_name" if refusal.field == "name" else refusal.field


def _after(
    request: Request, session: WritingSession, reader: Reader, saved: Saved, message: str
) -> Response:
    """On to the skein, or back to the garment it was made for."""
    plan = get(session, Plan, reader.typed("plan"))
    url = f"/garments/{plan.id}" if plan else _shown_at(saved)
    return after_save(request, url, message, undo=saved.event.seq)


def _shown_at(saved: Saved) -> str:
    one_only = len(saved.holdings) == 1
    return f"/skeins/{saved.holdings[0].id}" if one_only else f"/yarns/{saved.holdings[0].yarn_id}"
