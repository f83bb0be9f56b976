"""Weigh a ball on the needles: what went from it is knit in, and the garment is where it is."""

from dataclasses import dataclass, replace
from datetime import date

from sqlmodel import Session

from app.book.book import Book
from app.book.errors import HoldsTooLittle
from app.book.event import Balance, Event, Line
from app.book.ids import new_id
from app.book.knitting import Weighing
from app.book.plan import Promise
from app.book.woolbook import WEIGHING, Portion, mm_of, use
from app.planning.knitting.balls import in_order
from app.planning.knitting.done import rows_done
from app.planning.knitting.doubt import Doubt, courses_of, doubt_of
from app.planning.used import used_and_ripped
from app.store.records import load_book, post, put, remove
from app.work.event_undo import undo_event
from app.work.knit_tick import keep_progress
from app.work.promise_use import garment_of

MOISTURE = 0.05
"""What wool takes up at the most between two weighings, as a share of it (practice)."""


@dataclass(frozen=True, slots=True)
class BallWeighed:
    """What was read off the scale, and where in the garment. `sure` was answered to a doubt."""

    part_id: str
    piece: int
    rows: int
    holding_id: str
    mg: int
    typed: str
    scale_mg: int
    day: date
    minute: int | None = None
    sure: bool = False


class Doubted(Exception):
    """Met where a weighing is odd and nobody has said it is right all the same."""

    def __init__(self, doubt: Doubt) -> None:
        super().__init__(doubt.what)
        self.doubt = doubt


def weigh_ball(session: Session, plan_id: str, seen: BallWeighed) -> Weighing:
    """Keep the weighing, move what was knit in, and note rows that were not ticked off. Doubted
    where it is odd. One that is noted late, after the same ball was weighed further on, moves
    nothing: what went since is knit in already."""
    book = load_book(session)
    where = seen.part_id, seen.piece, seen.rows
    doubt = doubt_of(book, plan_id, where, seen.holding_id, seen.mg / 1000, seen.scale_mg / 1000)
    if doubt and not seen.sure:
        raise Doubted(doubt)
    if not _passed(book, plan_id, seen):
        _take_back(session, plan_id, seen)
        _move(session, load_book(session), plan_id, seen)
    if seen.rows > rows_done(book, plan_id).get(where[:2], 0):
        keep_progress(session, book, plan_id, *where, seen.day)
    weighing = Weighing(
        new_id(),
        plan_id,
        *where,
        seen.holding_id,
        seen.mg,
        seen.typed,
        seen.scale_mg,
        seen.day,
        seen.minute,
    )
    put(session, weighing)
    return weighing


def _passed(book: Book, plan_id: str, seen: BallWeighed) -> bool:
    """Whether the ball was weighed further on in the work already, and was lighter there."""
    mine = (one for one in in_order(book, plan_id) if one.holding_id == seen.holding_id)
    last = next(reversed([*mine]), None)
    if last is None or seen.mg <= last.mg:
        return False
    for course in courses_of(book, plan_id):
        here = course.at(seen.part_id, seen.piece, seen.rows)
        there = course.at(last.part_id, last.piece, last.rows)
        if here is not None and there is not None:
            return here < there
    return False


def _take_back(session: Session, plan_id: str, seen: BallWeighed) -> None:
    """A ball that gained more than moisture was weighed wrong before: what that took is undone, as
    far back as need be, and promised again."""
    for event in _uses_of(load_book(session), plan_id, seen.holding_id):
        held = load_book(session).balances[seen.holding_id]
        if seen.mg <= held.mg * (1 + MOISTURE):
            return
        try:
            undo_event(session, event.seq, seen.day)
        except HoldsTooLittle:
            return
        _promised_again(session, plan_id, seen, held)


def _uses_of(book: Book, plan_id: str, holding_id: str) -> list[Event]:
    """What was knit of a ball in a plan, the last first."""
    garments = {one.id for one in book.holdings if one.plan_id == plan_id and one.kind == "garment"}
    return [
        one
        for one in reversed([*used_and_ripped(book)])
        if one.kind == "use"
        and any(line.holding_id in garments for line in one.lines)
        and any(line.holding_id == holding_id and line.mg < 0 for line in one.lines)
    ]


def _promised_again(session: Session, plan_id: str, seen: BallWeighed, before: Balance) -> None:
    """What came back, as far as nothing else was promised of it."""
    book = load_book(session)
    now = book.balances[seen.holding_id].mm
    promised = sum(one.mm for one in book.promises if one.holding_id == seen.holding_id)
    mm = min(now - before.mm, now - promised)
    if mm > 0:
        promise = Promise(new_id(), plan_id, seen.part_id, seen.holding_id, mm, state="settled")
        put(session, promise)


def _move(session: Session, book: Book, plan_id: str, seen: BallWeighed) -> Event | None:
    """What the ball lost is in the garment; what it seems to have gained is moisture."""
    held = book.balances.get(seen.holding_id, Balance())
    gone = held.mg - seen.mg
    if gone > 0:
        taken = Portion(book.holding[seen.holding_id], gone, mm_of(held, gone))
        garment = garment_of(session, book, book.plan[plan_id])
        entry = use(book.balances, (taken,), garment)
        _promised_less(session, book, plan_id, seen.holding_id, taken.mm)
        return post(session, entry.kind, seen.day, entry.lines)
    if gone < 0:
        lines = (Line(seen.holding_id, -gone), Line(WEIGHING, gone))
        return post(session, "correct", seen.day, lines, note="weighed on the needles")
    return None


def _promised_less(session: Session, book: Book, plan_id: str, holding_id: str, mm: int) -> None:
    """What is knit in is no longer promised: parts in their order."""
    mine = [one for one in book.promises_of.get(plan_id, []) if one.holding_id == holding_id]
    order = {one.id: place for place, one in enumerate(book.parts_of.get(plan_id, []))}
    for promise in sorted(mine, key=lambda one: order.get(one.part_id, 0)):
        now = min(mm, promise.mm)
        mm -= now
        if now == promise.mm:
            remove(session, promise)
        elif now:
            put(session, replace(promise, mm=promise.mm - now))
