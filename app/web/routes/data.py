"""The maker's data: back it up, take it out as a document or a ZIP, bring one in."""

from collections.abc import Iterator
from contextlib import ExitStack
from datetime import date
from tempfile import TemporaryFile
from typing import IO

from fastapi import APIRouter, Request, Response
from fastapi.responses import StreamingResponse
from sqlmodel import Session

from app.book.errors import ExchangeError
from app.store.errors import NotSaved, Refused
from app.web.forms.reader import Posted, Reader
from app.web.pages.data import data_page
from app.web.session import ReadingSession, WritingSession
from app.web.templating import after_save, render
from app.work.data_count import count_data
from app.work.keep import back_up, export_book, import_file, without_pictures
from app.work.photo_zip import write_zip
from app.work.settings_read import settings_now

router = APIRouter()

DATA = "/settings/data"
NO_FILE = "Choose the file of an exported book."
PIECE = 1 << 18


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
    return Response(export_book(session), media_type="application/json", headers=_saved_as("json"))


@router.get("/settings/data/export.zip")
def export_zip(session: ReadingSession) -> Response:
    file = _zipped(session)
    return StreamingResponse(_pieces(file), media_type="application/zip", headers=_saved_as("zip"))


@router.post("/settings/data/import")
def bring_in(request: Request, session: WritingSession, posted: Posted) -> Response:
    reader = Reader(posted, settings_now(session))
    document = reader.files.get("document")
    if document is None or not document.size:
        reader.refuse("document", NO_FILE)
        return _refused(request, session, reader)
    try:
        wanting = without_pictures(session, import_file(session, document.file))
    except ExchangeError as error:
        reader.refuse("document", _unreadable(error.problems))
        return _refused(request, session, reader, error.problems)
    except Refused as error:
        reader.refuse("document", str(error))
        return _refused(request, session, reader)
    return after_save(request, DATA, f"The document is in your book. {wanting}".rstrip())


def _saved_as(kind: str) -> dict[str, str]:
    name = f"tallyhank-{date.today().isoformat()}.{kind}"
    return {"content-disposition": f'attachment; filename="{name}"'}


def _zipped(session: Session) -> IO[bytes]:
    """The book with its pictures in a file of its own, at its beginning: written whole before the
    answer begins, so that a lost picture or a full disk is said and not cut off."""
    with ExitStack() as given_up:
        file = given_up.enter_context(TemporaryFile())
        try:
            write_zip(session, file)
        except OSError as error:
            raise NotSaved(f"The ZIP could not be written: {error.strerror}.") from error
        file.seek(0)
        given_up.pop_all()
    return file


def _pieces(file: IO[bytes]) -> Iterator[bytes]:
    """What a file holds, a piece at a time; it goes when all is sent."""
    with file:
        while piece := file.read(PIECE):
            yield piece


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
