"""Tick rows off a garment on the needles, or take a tick back."""

from dataclasses import dataclass, replace
from datetime import date, timedelta

from sqlmodel import Session

from app.book.book import Book
from app.book.ids import new_id
from app.book.knitting import Progress
from app.planning.knitting.piece import rows_of_piece
from app.store.records import load_book, put
from app.store.taps import first_time, forget_taps

KEPT_DAYS = 400
"""A tap that waits on a device for a connection waits no longer than that."""


@dataclass(frozen=True, slots=True)
class Tap:
    """`rows` more of a piece of a part are done, or fewer where it is below zero. `id` is the
    device's own: the same tap sent twice is one tap."""

    id: str
    part_id: str
    piece: int
    rows: int


def tick(session: Session, plan_id: str, taps: tuple[Tap, ...], day: date) -> int:
    """Count taps that were not counted yet, in their order; answers how many those were.

    A tap for a part that is no longer there counts as counted and moves nothing; no piece has fewer
    rows than none, or more than it is long.
    """
    forget_taps(session, day - timedelta(days=KEPT_DAYS))
    counted = [one for one in taps if first_time(session, one.id, day)]
    book = load_book(session)
    rows = {(one.part_id, one.piece): one.rows for one in book.progress if one.plan_id == plan_id}
    for one in counted:
        of = rows_of_piece(book, plan_id, one.part_id, one.piece)
        key = one.part_id, one.piece
        rows[key] = min(max(0, rows.get(key, 0) + one.rows), of)
    for part_id, piece in {(one.part_id, one.piece): None for one in counted}:
        if rows_of_piece(book, plan_id, part_id, piece):
            keep_progress(session, book, plan_id, part_id, piece, rows[part_id, piece], day)
    return len(counted)


def keep_progress(
    session: Session, book: Book, plan_id: str, part_id: str, piece: int, rows: int, day: date
) -> Progress:
    """So many rows of a piece are done."""
    mine = (one for one in book.progress if (one.part_id, one.piece) == (part_id, piece))
    old = next(mine, Progress(new_id(), plan_id, part_id, piece, 0, day))
    made = replace(old, rows=rows, day=day)
    put(session, made)
    return made
