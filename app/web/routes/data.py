"""The maker's data: back it up, take it out as a document, bring a document in."""

from datetime import date

from fastapi import APIRouter, Request, Response
from sqlmodel import Session

from app.book.errors import ExchangeError
from app.store.errors import Refused
from app.web.forms.reader import Posted, Reader
from app.web.pages.data import data_page
from app.web.session import ReadingSession, WritingSession
from app.web.templating import after_save, render
from app.work.data_count import count_data
from app.work.keep import back_up, export_book, import_book
from app.work.settings_read import settings_now

router = APIRouter()

DATA = "/settings/data"
NO_FILE = "Choose the file of an exported book."


@router.get(DATA)
def show(request: Request, session: ReadingSession) -> Response:
    folder = request.app.state.store.folder
    return render(
        request, "pages/settings/data.html", data_page(count_data(session, folder), folder)
    )


@router.post("/settings/data/backup")
def make_backup(request: Request) -> Response:
    file = back_up(request.app.state.store.folder)
    return after_save(request, DATA, f"Backed up and verified: {file.name}.")


@router.get("/settings/data/export")
def export(session: ReadingSession) -> Response:
    name = f"tallyhank-{date.today().isoformat()}.json"
    headers = {"content-disposition": f'attachment; filename="{name}"'}
    return Response(export_book(session), media_type="application/json", headers=headers)


@router.post("/settings/data/import")
def bring_in(request: Request, session: WritingSession, posted: Posted) -> Response:
    reader = Reader(posted, settings_now(session))
    document = reader.files.get("document")
    text = document.file.read() if document else b""
    if not text:
        reader.refuse("document", NO_FILE)
        return _refused(request, session, reader)
    try:
        import_book(session, text)
    except ExchangeError as error:
        reader.refuse("document", _unreadable(error.problems))
        return _refused(request, session, reader, error.problems)
    except Refused as error:
        reader.refuse("document", str(error))
        return _refused(request, session, reader)
    return after_save(request, DATA, "The document is in your book.")


def _unreadable(problems: tuple[str, ...]) -> str:
    """What is wrong first of all; the page lists the rest."""
    more = " All that is wrong is listed under Import." if problems[1:] else ""
    first = f"This document cannot be read: {problems[0].rstrip('.')}."
    return f"{first}{more} Nothing of it was taken in."


def _refused(
    request: Request, session: Session, reader: Reader, problems: tuple[str, ...] = ()
) -> Response:
    folder = request.app.state.store.folder
    page = data_page(count_data(session, folder), folder, reader.filled(), problems)
    return render(request, "pages/settings/data.html", page, status=422)
