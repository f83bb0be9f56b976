"""Take the colour of wool from a patch of its photo."""

from dataclasses import replace

from sqlmodel import Session

from app.book.photo import Photo
from app.craft.mean_colour import mean_colour
from app.store.photos import folder_of, read_picture
from app.store.picture_file import patch
from app.store.records import put
from app.work.undo_records import Written, remember_written


def colour_at(session: Session, photo: Photo, across: float, down: float) -> str:
    """The mean colour around a point of a photo, in shares of its width and height from the top
    left; Damaged or NotAPicture where its picture is lost."""
    return mean_colour(patch(read_picture(folder_of(session), photo.sha256), across, down))


def give_colour(session: Session, wool: Written, colour: str, words: str) -> str:
    """Write down the colour of a fleece or a skein; answers the key to undo it by."""
    now = replace(wool, colour=colour)
    put(session, now)
    return remember_written(session, wool, now, words)
