"""One photo: its caption and day, a colour taken from it, and taking it out."""

from fastapi import APIRouter, Request, Response
from sqlmodel import Session

from app.book.photo import Photo
from app.book.stamp import stamp
from app.store.errors import Damaged
from app.store.photos import folder_of, state_of
from app.store.picture_file import NotAPicture
from app.web.errors import NotNow, Stale
from app.web.forms.filled import Filled
from app.web.forms.photos import caption_values, read_caption, read_point
from app.web.forms.reader import Posted, Reader
from app.web.pages.photos import photo_page, url_of
from app.web.photo_shown import as_opened, photo_or_missing
from app.web.session import ReadingSession, WritingSession
from app.web.templating import after_save, render, shown_in
from app.work.photo_change import change_photo, remove_photo
from app.work.photo_colour import colour_at, give_colour
from app.work.photo_find import subject_of_photo
from app.work.reckoning import current
from app.work.undo_records import remember

router = APIRouter(prefix="/photos/{photo_id}")

LOST = "The picture of this photo is missing or damaged, so no colour can be taken from it."


@router.get("")
def show(request: Request, session: ReadingSession, photo_id: str) -> Response:
    photo = photo_or_missing(current(session).book, photo_id)
    return _page(request, session, photo, Filled(caption_values(photo), stamp=stamp(photo)))


@router.post("/change")
def change(request: Request, session: WritingSession, posted: Posted, photo_id: str) -> Response:
    book = current(session).book
    photo, reader = photo_or_missing(book, photo_id), Reader(posted, book.settings)
    as_opened(photo, reader)
    day, caption = read_caption(reader)
    if not reader.ok:
        return _page(request, session, photo, reader.filled(), 422)
    change_photo(session, photo, day, caption)
    message = "What is written of this photo is changed."
    return after_save(request, f"/photos/{photo_id}", message, remember(session, book, message))


@router.post("/remove")
def take_out(request: Request, session: WritingSession, posted: Posted, photo_id: str) -> Response:
    book = current(session).book
    photo = photo_or_missing(book, photo_id)
    as_opened(photo, Reader(posted, book.settings))
    remove_photo(session, photo)
    subject = subject_of_photo(book, photo)
    message = f"The photo of {subject.name if subject else 'something gone'} is taken out."
    back = f"{url_of(subject)}/photos" if subject else "/"
    return after_save(request, back, message, remember(session, book, message))


@router.post("/colour")
def colour(request: Request, session: WritingSession, posted: Posted, photo_id: str) -> Response:
    book = current(session).book
    photo, reader = photo_or_missing(book, photo_id), Reader(posted, book.settings)
    subject = subject_of_photo(book, photo)
    if subject is None or subject.wool is None:
        raise NotNow("Only a fleece or a skein has a colour of its own.", f"/photos/{photo_id}")
    if reader.stamp != stamp(subject.wool):
        raise Stale(subject.name, f"/photos/{photo_id}")
    across, down = read_point(reader, photo)
    try:
        found = colour_at(session, photo, across, down)
    except (Damaged, NotAPicture) as error:
        raise NotNow(LOST, f"/photos/{photo_id}") from error
    message = f"{subject.name} now has the colour of that place, {found}."
    undo = give_colour(session, subject.wool, found, message)
    return after_save(request, f"/photos/{photo_id}", message, undo)


def _page(
    request: Request, session: Session, photo: Photo, form: Filled, status: int = 200
) -> Response:
    book = current(session).book
    subject = subject_of_photo(book, photo)
    lost = state_of(folder_of(session), photo.sha256)
    of_wool = stamp(subject.wool) if subject and subject.wool else ""
    page = photo_page(photo, subject, lost, form, of_wool, shown_in(book.settings))
    return render(request, "pages/photos/photo.html", page, status=status)
