"""Photos, and what they are of: a fleece, a skein or a garment."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from typing import Literal

from app.book.book import Book
from app.book.fleece import Fleece
from app.book.holding import Holding
from app.book.photo import Photo
from app.book.words import YARN_KINDS

SubjectKind = Literal["fleece", "skein", "garment"]


@dataclass(frozen=True, slots=True)
class Subject:
    """What a photo is of; `wool` is whatever has a colour of its own, None for a garment."""

    kind: SubjectKind
    id: str
    name: str
    wool: Fleece | Holding | None


def subject_of(book: Book, kind: SubjectKind, id: str) -> Subject | None:
    """The fleece, skein or garment of this id; None where there is none."""
    if kind == "fleece" and (fleece := book.fleece.get(id)):
        return Subject(kind, id, fleece.name, fleece)
    if kind == "skein" and (skein := book.holding.get(id)) and skein.kind in YARN_KINDS:
        return Subject(kind, id, skein.code, skein)
    if kind == "garment" and (plan := book.plan.get(id)):
        return Subject(kind, id, plan.name, None)
    return None


def subject_of_photo(book: Book, photo: Photo) -> Subject | None:
    """What a photo is of; None where it says nothing of it, or nothing that has a page."""
    named: tuple[tuple[SubjectKind, str | None], ...] = (
        ("skein", photo.holding_id),
        ("fleece", photo.fleece_id),
        ("garment", photo.plan_id),
    )
    found = (subject_of(book, kind, id) for kind, id in named if id)
    return next((one for one in found if one), None)


def photos_of(photos: Iterable[Photo], kind: SubjectKind, id: str) -> tuple[Photo, ...]:
    """The photos of one thing, the oldest first, those without a day last."""
    named = {"fleece": "fleece_id", "skein": "holding_id", "garment": "plan_id"}[kind]
    found = (one for one in photos if getattr(one, named) == id)
    return tuple(sorted(found, key=lambda one: (one.day or date.max, one.id)))


def photo_of_id(book: Book, id: str) -> Photo | None:
    """The photo of this id; None where there is none."""
    return next((one for one in book.photos if one.id == id), None)
