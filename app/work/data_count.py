"""How much the book holds, and the backups there are of it."""

from dataclasses import dataclass
from pathlib import Path

from sqlmodel import Session

from app.book.words import YARN_KINDS
from app.store.backup import backups
from app.store.fill import is_empty
from app.store.records import load_book


@dataclass(frozen=True, slots=True)
class DataCount:
    """Numbers of records; `backups` the latest first."""

    empty: bool
    fleeces: int
    skeins: int
    garments: int
    people: int
    backups: tuple[Path, ...]


def count_data(session: Session, folder: Path) -> DataCount:
    """What the book of a folder holds."""
    book = load_book(session)
    return DataCount(
        empty=is_empty(session),
        fleeces=len(book.fleeces),
        skeins=sum(one.kind in YARN_KINDS for one in book.holdings),
        garments=len(book.plans),
        people=len(book.people),
        backups=tuple(backups(folder)),
    )
