"""Settings: how things are reckoned and shown."""

from fastapi import APIRouter, Request, Response

from app.book.stamp import stamp
from app.web.errors import Stale
from app.web.forms.reader import Posted, Reader
from app.web.forms.settings import filled_settings, read_settings
from app.web.pages.settings import settings_page
from app.web.session import ReadingSession, WritingSession
from app.web.templating import after_save, render
from app.work.person_save import people
from app.work.settings_change import change_settings
from app.work.settings_read import settings_now

router = APIRouter()

PAGE = "pages/settings/settings.html"


@router.get("/settings")
def show(request: Request, session: ReadingSession) -> Response:
    settings = settings_now(session)
    page = settings_page(settings, people(session), filled_settings(settings))
    return render(request, PAGE, page)


@router.post("/settings")
def change(request: Request, session: WritingSession, form: Posted) -> Response:
    old = settings_now(session)
    reader = Reader(form, old)
    if reader.stamp != stamp(old):
        raise Stale("The settings", "/settings")
    wanted = read_settings(reader, old)
    if not reader.ok:
        page = settings_page(old, people(session), reader.filled())
        return render(request, PAGE, page, status=422)
    change_settings(session, wanted)
    return after_save(request, "/settings", "The settings are saved.")
