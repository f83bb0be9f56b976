"""Skeins as a table: saved to a file, and brought in from one."""

from datetime import date

from fastapi import APIRouter, Request, Response

from app.web.forms.filled import Filled
from app.web.forms.skein_csv import read_skeins
from app.web.forms.skein_csv_file import PostedTable, read_table, seal
from app.web.pages.skein_csv import brought_said, import_page, preview_page
from app.web.session import READS, ReadingSession, WritingSession
from app.web.templating import after_save, render, shown_in
from app.work.reckoning import current
from app.work.skein_csv import bring_in, export_skeins

router = APIRouter()

PAGE = "pages/skeins/import.html"
CHANGED = "You changed the table since you looked at it. Look through it below, then bring it in."


@router.get("/skeins/csv")
def save_table(session: ReadingSession) -> Response:
    name = f"skeins-{date.today().isoformat()}.csv"
    headers = {"content-disposition": f'attachment; filename="{name}"'}
    return Response(export_skeins(session), media_type="text/csv; charset=utf-8", headers=headers)


@router.get("/skeins/import", dependencies=[READS])
def ask_table(request: Request) -> Response:
    return render(request, PAGE, import_page(Filled()))


@router.post("/skeins/import")
def bring_table(request: Request, session: WritingSession, posted: PostedTable) -> Response:
    book = current(session).book
    shown = shown_in(book.settings)
    reader, text, table = read_table(posted, book.settings)
    if table is None:
        return render(request, PAGE, import_page(reader.filled()), status=422)
    read, wanted = read_skeins(table, book), reader.typed("do") == "bring in"
    if wanted and reader.typed("seen") != seal(text.text):
        reader.refuse("table", CHANGED)
    elif wanted and not read.faults:
        brought = bring_in(session, read.listed)
        only = brought.events[0].seq if len(brought.events) == 1 else None
        message = brought_said(len(brought.skeins), shown)
        return after_save(request, "/skeins", message, undo=only)
    page = preview_page(reader.filled(), text, table, read, book, shown)
    return render(request, PAGE, page, status=200 if reader.ok and not read.faults else 422)
