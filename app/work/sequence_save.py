"""Keep that yarns take turns in parts of a garment, or that they do no longer."""

from collections.abc import Iterable
from dataclasses import replace

from sqlmodel import Session

from app.book.plan import Part
from app.work.part_save import change_part


def keep_turns(session: Session, parts: Iterable[Part]) -> int:
    """Put parts with their sequences in the place of their older selves. Answers how many promises
    were freed, of yarns that are knit in them no more."""
    return sum(change_part(session, part) for part in parts)


def end_turns(session: Session, part: Part) -> int:
    """A part in one yarn again. Answers how many promises were freed."""
    return change_part(session, replace(part, sequence=None))
