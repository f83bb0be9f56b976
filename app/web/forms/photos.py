"""The forms of photos: a picture to add, its day and caption, a point to take a colour from."""

from datetime import date
from typing import Annotated

from fastapi import Depends
from starlette.datastructures import UploadFile

from app.book.photo import Photo
from app.store.picture_file import MOST_BYTES, NotAPicture, Picture, prepare
from app.web.forms.reader import Posted, Reader

NO_FILE = "Choose a picture."
LONGEST_CAPTION = 200
SHOWN_WIDTH = 320
"""Screen pixels a picture is shown wide where it is pointed at: fixed, since a browser without
scripts tells where it was pressed in these and not how large it drew the picture."""

PLACES: dict[str, tuple[float, float]] = {
    "the middle": (0.5, 0.5),
    "top left": (0.2, 0.2),
    "top": (0.5, 0.2),
    "top right": (0.8, 0.2),
    "left": (0.2, 0.5),
    "right": (0.8, 0.5),
    "bottom left": (0.2, 0.8),
    "bottom": (0.5, 0.8),
    "bottom right": (0.8, 0.8),
}
"""Where to take a colour from, in shares of width and height, for those who do not point."""


def sent_picture(posted: Posted) -> Picture | str:
    """The picture that was sent, or what is wrong with it in words.

    Decoded before the right to write is taken, so that nobody waits for it.
    """
    sent = posted.get("picture")
    content = sent.file.read(MOST_BYTES + 1) if isinstance(sent, UploadFile) else b""
    if not content:
        return NO_FILE
    try:
        return prepare(content)
    except NotAPicture as refusal:
        return str(refusal)


SentPicture = Annotated[Picture | str, Depends(sent_picture)]


def read_caption(reader: Reader) -> tuple[date | None, str]:
    """The day and caption of a photo."""
    day = reader.day("day", until=date.today())
    return day, " ".join(reader.text("caption", longest=LONGEST_CAPTION).split())


def caption_values(photo: Photo) -> dict[str, str]:
    """The day and caption of a photo as its form shows them."""
    return {"day": photo.day.isoformat() if photo.day else "", "caption": photo.caption}


def shown_height(photo: Photo) -> int:
    """Screen pixels a photo is shown high where it is SHOWN_WIDTH wide."""
    return max(1, round(SHOWN_WIDTH * photo.height / photo.width))


def read_point(reader: Reader, photo: Photo) -> tuple[float, float]:
    """Where a photo was pressed, or the place that was chosen, in shares of width and height.

    A picture sent by its key and not by pointing tells 0, 0; then the place counts.
    """
    x = reader.whole("at.x", most=10_000) or 0
    y = reader.whole("at.y", most=10_000) or 0
    if x or y:
        return x / SHOWN_WIDTH, y / shown_height(photo)
    return PLACES[reader.choice("place", PLACES, default="the middle") or "the middle"]
