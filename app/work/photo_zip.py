"""The book with its pictures in one ZIP: book.json, and photos/ with a file for each picture.

Nothing in it depends on when or where it was written: the entries stand in a fixed order, with a
fixed date, not compressed, so that writing, reading and writing again gives the same bytes. What is
read is held to be somebody else's until it proves to be ours: every name, size and digest.
"""

import re
from collections.abc import Iterable, Iterator
from hashlib import sha256
from typing import IO
from zipfile import ZIP_DEFLATED, ZIP_STORED, BadZipFile, ZipFile, ZipInfo

from sqlmodel import Session

from app.book.book import Book
from app.book.errors import ExchangeError
from app.book.exchange import dumps, loads
from app.book.photo import Photo
from app.store.errors import Damaged
from app.store.fill import fill
from app.store.photos import file_name, folder_of, keep_picture, read_picture
from app.store.picture_file import MEDIA, NotAPicture, size_of
from app.store.records import load_book

BEGINNING = b"PK\x03\x04"
"""The first bytes of a ZIP with something in it."""

BOOK = "book.json"
PHOTO = re.compile(r"photos/[0-9a-f]{64}\.jpg")
FIRST_DAY = (1980, 1, 1, 0, 0, 0)
UNIX, READABLE = 3, 0o644 << 16

MOST_FILES = 50_000
MOST_BOOK = 100_000_000
MOST_PHOTO = 8_000_000
MOST_IN_ALL = 8_000_000_000
"""Bytes once unpacked; a guild's book has a fifth of that, a kept picture a tenth of that."""


def write_zip(session: Session, target: IO[bytes]) -> None:
    """Write the whole book with its pictures; Damaged, naming the photo, where one is lost."""
    book = load_book(session)
    with ZipFile(target, "w", ZIP_STORED) as archive:
        _add(archive, BOOK, dumps(book).encode())
        for photo in _one_a_picture(book.photos):
            _add(archive, entry_of(photo), _picture(session, photo))


def read_zip(session: Session, source: IO[bytes]) -> Book:
    """Bring a ZIP into an empty book, all of it or nothing; answers the book.

    ExchangeError where the ZIP is wrong, Refused where there are records already. Pictures kept
    before something went wrong are named by no row, and swept.
    """
    try:
        with ZipFile(source) as archive:
            _of_our_form(archive.infolist())
            book = loads(archive.read(BOOK))
            photos = list(_one_a_picture(book.photos))
            _the_same_files(archive, photos)
            for photo in photos:
                keep_picture(folder_of(session), _proved(photo, archive.read(entry_of(photo))))
    except (BadZipFile, EOFError, NotImplementedError, RuntimeError, ValueError) as error:
        if isinstance(error, ExchangeError):
            raise
        raise ExchangeError(
            [f"The ZIP is damaged or of a kind that is not read: {error}."]
        ) from error
    fill(session, book)
    return book


def entry_of(photo: Photo) -> str:
    """The name of a photo's picture in the ZIP."""
    return f"photos/{file_name(photo.sha256)}"


def _one_a_picture(photos: Iterable[Photo]) -> Iterator[Photo]:
    """A photo for each picture, in the order of their names."""
    found = {photo.sha256: photo for photo in photos}
    return (found[digest] for digest in sorted(found))


def _picture(session: Session, photo: Photo) -> bytes:
    try:
        return read_picture(folder_of(session), photo.sha256)
    except Damaged as error:
        named = photo.caption or photo.id
        raise Damaged(
            f"{error} Bring it back from a backup or take out its photo ({named}), then export "
            "again; an export without .zip needs no pictures."
        ) from error


def _add(archive: ZipFile, name: str, content: bytes) -> None:
    entry = ZipInfo(name, FIRST_DAY)
    entry.create_system, entry.external_attr = UNIX, READABLE
    archive.writestr(entry, content, ZIP_STORED)


def _of_our_form(entries: list[ZipInfo]) -> None:
    """Refuse by the list of contents alone; nothing is unpacked before."""
    if len(entries) > MOST_FILES:
        raise ExchangeError(["The ZIP has too many files in it to be a book."])
    problems = [problem for entry in entries if (problem := _wrong_with(entry))]
    names = [entry.filename for entry in entries]
    problems += [f"{name}: it is there twice." for name in {*names} if names.count(name) > 1][:1]
    if BOOK not in names:
        problems.append(f"The ZIP has no {BOOK} in it: it is no exported book.")
    if sum(entry.file_size for entry in entries) > MOST_IN_ALL:
        problems.append("The ZIP would be larger than 8 GB once unpacked.")
    if problems:
        raise ExchangeError(problems)


def _wrong_with(entry: ZipInfo) -> str:
    name = entry.filename
    if name != BOOK and not PHOTO.fullmatch(name):
        return f"{name[:80]!r}: a file of this name does not belong to a book."
    if entry.file_size > (MOST_BOOK if name == BOOK else MOST_PHOTO):
        return f"{name}: it would be too large once unpacked."
    if entry.flag_bits & 1:
        return f"{name}: it is locked with a password."
    if entry.compress_type not in (ZIP_STORED, ZIP_DEFLATED):
        return f"{name}: it is packed in a way that is not read."
    return ""


def _the_same_files(archive: ZipFile, photos: list[Photo]) -> None:
    """Refuse a book whose photos and files do not match, or that names a file it may not have."""
    wanted, there = {entry_of(photo) for photo in photos}, {*archive.namelist()} - {BOOK}
    problems = [
        f"{name}: the book has a photo of it, the ZIP has no such file."
        for name in sorted(wanted - there)
    ]
    problems += [
        f"{name}: no photo of the book is of this file." for name in sorted(there - wanted)
    ]
    if problems:
        raise ExchangeError(problems)


def _proved(photo: Photo, content: bytes) -> bytes:
    """The content of a file that is the picture its photo says it is."""
    name = entry_of(photo)
    if sha256(content).hexdigest() != photo.sha256:
        raise ExchangeError([f"{name}: the file is not the one that was exported."])
    try:
        size = size_of(content)
    except NotAPicture as error:
        raise ExchangeError([f"{name}: it is no picture of the kind that is kept."]) from error
    if (photo.media, photo.bytes, (photo.width, photo.height)) != (MEDIA, len(content), size):
        raise ExchangeError([f"{name}: its size is not what the book says of it."])
    return content
