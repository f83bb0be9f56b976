"""Write down a part of a garment, change it, move it or take it out."""

from collections.abc import Callable
from dataclasses import replace

from sqlmodel import Session

from app.book.checks import knit_roles
from app.book.plan import Part, Plan, Promise
from app.planning.parted import parted
from app.store.records import load_book, put, remove
from app.work.knit_course import renew_cast_on
from app.work.plan_order import moved


def add_part(session: Session, part: Part) -> Part:
    """Add a part after the others of its plan; answers the part with its position."""
    was = load_book(session)
    others = was.parts_of.get(part.plan_id, [])
    placed = replace(part, position=max((one.position for one in others), default=0) + 1)
    put(session, placed)
    renew_cast_on(session, was, part.plan_id)
    return placed


def change_part(session: Session, part: Part) -> int:
    """Put a part in the place of its older self, and free what was promised to a yarn that it is
    no longer knit with. Answers how many promises were freed. A part on the needles whose gauge is
    changed keeps the number that follows from it, for all its rows."""
    was = load_book(session)
    put(session, part)
    renew_cast_on(session, was, part.plan_id)
    roles = knit_roles(part)
    return _free(session, part, lambda promise: promise.role not in roles)


def match_part(session: Session, plan: Plan, part: Part) -> Part | None:
    """Draw a part so that it meets again what it was drawn to meet; None where nothing is off, or
    it cannot be drawn by itself."""
    found = parted(plan, load_book(session).parts_of.get(plan.id, []))
    matched = next((one.matched for one in found if one.part.id == part.id), None)
    if matched is not None:
        put(session, matched)
    return matched


def remove_part(session: Session, part: Part) -> int:
    """Take a part out of its plan and free what was promised to it.

    Answers how many promises were freed.
    """
    freed = _free(session, part, lambda _: True)
    remove(session, part)
    return freed


def move_part(session: Session, part: Part, earlier: bool) -> bool:
    """Move a part one place earlier or later within its plan; False where it stands there."""
    parts = load_book(session).parts_of[part.plan_id]
    row = moved(parts, part, earlier)
    for position, one in enumerate(row, start=1):
        if one.position != position:
            put(session, replace(one, position=position))
    return row != parts


def _free(session: Session, part: Part, which: Callable[[Promise], bool]) -> int:
    promises = load_book(session).promises_of.get(part.plan_id, [])
    freed = [one for one in promises if one.part_id == part.id and which(one)]
    for promise in freed:
        remove(session, promise)
    return len(freed)
