"""The photos of a fleece, a skein or a garment, and the page of one photo."""

from collections.abc import Iterable
from dataclasses import dataclass

from app.book.photo import Photo
from app.store.photos import file_name
from app.web.forms.filled import Filled
from app.web.forms.photos import PLACES, SHOWN_WIDTH, shown_height
from app.web.pages.answer import Sentence
from app.web.shown import Shown
from app.work.photo_find import Subject, SubjectKind

ROOM_OF: dict[SubjectKind, str] = {"fleece": "fleeces", "skein": "skeins", "garment": "garments"}
KIND_OF: dict[str, SubjectKind] = {room: kind for kind, room in ROOM_OF.items()}


@dataclass(frozen=True, slots=True)
class PhotoShown:
    """A photo as it is drawn: the addresses of its page and of its picture, and `words` for those
    who do not see it."""

    url: str
    picture: str
    width: int
    height: int
    words: str
    below: str


@dataclass(frozen=True, slots=True)
class PhotosPage:
    """`kept_in` (its room) and `id` are sent along with a picture that is added."""

    answer: Sentence
    name: str
    back: str
    kept_in: str
    id: str
    photos: tuple[PhotoShown, ...]
    form: Filled


@dataclass(frozen=True, slots=True)
class PhotoPage:
    """`lost` says what is wrong with the picture, if something is; `colour` is that of what it
    shows, and `colour_stamp` is empty where that has none."""

    id: str
    photo: PhotoShown
    name: str
    back: str
    all_photos: str
    lost: str
    form: Filled
    colour: str
    colour_stamp: str
    colour_form: Filled
    places: dict[str, str]
    press_width: int
    press_height: int


def url_of(subject: Subject) -> str:
    """The page of what a photo is of."""
    return f"/{ROOM_OF[subject.kind]}/{subject.id}"


def photos_shown(photos: Iterable[Photo], name: str, shown: Shown) -> tuple[PhotoShown, ...]:
    """Photos of the thing of this name, as they are drawn."""
    return tuple(photo_shown(one, name, shown) for one in photos)


def photo_shown(photo: Photo, name: str, shown: Shown) -> PhotoShown:
    day = shown.day(photo.day) if photo.day else ""
    below = ", ".join(one for one in (photo.caption, day) if one)
    return PhotoShown(
        url=f"/photos/{photo.id}",
        picture=f"/photos/file/{file_name(photo.sha256)}",
        width=photo.width,
        height=photo.height,
        words=f"{name}: {below}" if below else f"Photo of {name}",
        below=below,
    )


def photos_page(
    subject: Subject, photos: tuple[Photo, ...], form: Filled, shown: Shown
) -> PhotosPage:
    return PhotosPage(
        answer=_counted(len(photos), shown),
        name=subject.name,
        back=url_of(subject),
        kept_in=ROOM_OF[subject.kind],
        id=subject.id,
        photos=photos_shown(photos, subject.name, shown),
        form=form,
    )


def photo_page(
    photo: Photo,
    subject: Subject | None,
    lost: str,
    form: Filled,
    colour_stamp: str,
    shown: Shown,
) -> PhotoPage:
    name = subject.name if subject else "something that is gone"
    return PhotoPage(
        id=photo.id,
        photo=photo_shown(photo, name, shown),
        name=name,
        back=url_of(subject) if subject else "/",
        all_photos=f"{url_of(subject)}/photos" if subject else "/",
        lost=lost,
        form=form,
        colour=subject.wool.colour if subject and subject.wool else "",
        colour_stamp=colour_stamp,
        colour_form=Filled({"place": "the middle"}, stamp=colour_stamp),
        places={one: one for one in PLACES},
        press_width=SHOWN_WIDTH,
        press_height=shown_height(photo),
    )


def _counted(number: int, shown: Shown) -> Sentence:
    if not number:
        return Sentence("idle", "No photo yet.")
    return Sentence("idle", f"{shown.number(number)} photo{'s' if number > 1 else ''}.")
