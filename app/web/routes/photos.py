"""Photos of a fleece, a skein or a garment: look at them, add one; and the pictures themselves."""

from fastapi import APIRouter, Request, Response
from fastapi.responses import FileResponse

from app.store.photos import NAME, photos_folder
from app.store.picture_file import MEDIA
from app.web.errors import Missing
from app.web.forms.filled import Filled
from app.web.forms.photos import SentPicture, read_caption
from app.web.forms.reader import Posted, Reader
from app.web.pages.photos import photos_page, url_of
from app.web.photo_shown import subject_or_missing
from app.web.session import ReadingSession, WritingSession
from app.web.templating import after_save, render, shown_in
from app.work.photo_add import add_photo
from app.work.photo_find import photos_of
from app.work.reckoning import current
from app.work.undo_records import remember

router = APIRouter()

PHOTOS = "pages/photos/photos.html"


@router.get("/photos/file/{name}")
def picture(request: Request, name: str) -> Response:
    file = photos_folder(request.app.state.store.folder) / name
    if not NAME.fullmatch(name) or not file.is_file():
        raise Missing("This picture")
    return FileResponse(file, media_type=MEDIA)


@router.get("/{room}/{one_id}/photos")
def show(request: Request, session: ReadingSession, room: str, one_id: str) -> Response:
    book = current(session).book
    subject = subject_or_missing(book, room, one_id)
    photos = photos_of(book.photos, subject.kind, one_id)
    return render(request, PHOTOS, photos_page(subject, photos, Filled(), shown_in(book.settings)))


@router.post("/photos")
def add(request: Request, posted: Posted, sent: SentPicture, session: WritingSession) -> Response:
    book = current(session).book
    reader = Reader(posted, book.settings)
    subject = subject_or_missing(book, reader.typed("room"), reader.typed("of"))
    day, caption = read_caption(reader)
    if isinstance(sent, str):
        reader.refuse("picture", sent)
    elif reader.ok:
        add_photo(session, sent, subject, day, caption)
        message = f"The photo of {subject.name} is kept."
        undo = remember(session, book, message)
        return after_save(request, f"{url_of(subject)}/photos", message, undo)
    photos = photos_of(book.photos, subject.kind, subject.id)
    page = photos_page(subject, photos, reader.filled(), shown_in(book.settings))
    return render(request, PHOTOS, page, status=422)
