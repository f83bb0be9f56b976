"""Add a photo: its picture is on the disk before its row is written."""

from datetime import date

from sqlmodel import Session

from app.book.ids import new_id
from app.book.photo import Photo
from app.store.photos import folder_of, keep_picture
from app.store.picture_file import MEDIA, Picture
from app.store.records import put
from app.work.photo_find import Subject


def add_photo(
    session: Session, picture: Picture, of: Subject, day: date | None, caption: str
) -> Photo:
    """Keep a picture as a photo of something; NotSaved where the disk has no room for it."""
    photo = Photo(
        id=new_id(),
        sha256=keep_picture(folder_of(session), picture.content),
        media=MEDIA,
        bytes=len(picture.content),
        width=picture.width,
        height=picture.height,
        fleece_id=of.id if of.kind == "fleece" else None,
        holding_id=of.id if of.kind == "skein" else None,
        plan_id=of.id if of.kind == "garment" else None,
        day=day,
        caption=caption,
    )
    put(session, photo)
    return photo
