"""A pasted table of sizes: looked at line by line, then kept as the sizes of its pattern."""

from dataclasses import replace

from fastapi import APIRouter, Request, Response

from app.book.stamp import stamp
from app.web.errors import Stale
from app.web.forms.pattern_table import read_table
from app.web.forms.reader import Posted, Reader
from app.web.forms.skein_csv_file import seal
from app.web.pages.pattern_paste import paste_page
from app.web.routes.patterns import pattern_or_missing
from app.web.session import ReadingSession, WritingSession
from app.web.templating import after_save, render, shown_in
from app.work.pattern_save import save_pattern
from app.work.settings_read import settings_now

router = APIRouter(prefix="/patterns/{pattern_id}/paste")

PAGE = "pages/patterns/paste.html"
CHANGED = "You changed the table since you looked at it. Look through it, then keep it."


@router.get("")
def ask_table(request: Request, session: ReadingSession, pattern_id: str) -> Response:
    pattern = pattern_or_missing(session, pattern_id)
    return render(request, PAGE, paste_page(pattern, shown_in(settings_now(session))))


@router.post("")
def take_table(
    request: Request, session: WritingSession, posted: Posted, pattern_id: str
) -> Response:
    pattern, settings = pattern_or_missing(session, pattern_id), settings_now(session)
    reader = Reader(posted, settings)
    if reader.stamp != stamp(pattern):
        raise Stale(pattern.name, f"/patterns/{pattern_id}")
    table = reader.values.get("table", "").replace("\r\n", "\n")
    read, wanted = read_table(table, settings), reader.typed("do") == "keep"
    if wanted and reader.typed("seen") != seal(table):
        reader.refuse("table", CHANGED)
    elif wanted and not read.faults:
        save_pattern(session, replace(pattern, sizes=read.sizes, shares=read.shares))
        return after_save(request, f"/patterns/{pattern_id}", f"{pattern.name} has its sizes.")
    page = paste_page(pattern, shown_in(settings), reader.filled(table=table), read)
    bad = bool(read.faults) or not reader.ok
    return render(request, PAGE, page, status=422 if bad else 200)
