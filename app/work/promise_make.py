"""Put a skein to a part of a garment, change how much of it, or take it off again."""

from dataclasses import replace

from sqlmodel import Session

from app.book.book import Book
from app.book.ids import new_id
from app.book.plan import Promise
from app.book.words import PromiseState
from app.store.records import put, remove
from app.work.promise_free import available_mm, refuse_beyond
from app.work.reckoning import current


def promise_skein(
    session: Session, part_id: str, holding_id: str, mm: int | None = None
) -> Promise:
    """Promise `mm` of a skein to a part, or all the plan may have of it where `mm` is None.

    More of a skein that already lies with this part is added to its promise. BeyondFree beyond what
    is free; KeyError where the part or the skein is gone.
    """
    known = current(session)
    part = known.book.part[part_id]
    line = known.reckoning.shelf[holding_id]
    more = max(available_mm(line, part.plan_id), 1) if mm is None else mm
    refuse_beyond(line, part.plan_id, more)
    old = _promised(known.book, part_id, holding_id)
    promise = old or Promise(new_id(), part.plan_id, part_id, holding_id, mm=0)
    made = replace(promise, mm=promise.mm + more, state=_state(known.book, part.plan_id), why="")
    put(session, made)
    return made


def change_promise(session: Session, promise: Promise, mm: int) -> Promise:
    """Promise `mm` of the same skein instead; BeyondFree beyond what is free."""
    known = current(session)
    line = known.reckoning.shelf[promise.holding_id]
    refuse_beyond(line, promise.plan_id, mm, already=(promise,))
    changed = replace(promise, mm=mm, state=_state(known.book, promise.plan_id))
    put(session, changed)
    return changed


def take_off(session: Session, promise: Promise) -> None:
    """Free what was promised."""
    remove(session, promise)


def _promised(book: Book, part_id: str, holding_id: str) -> Promise | None:
    for one in book.promises:
        if (one.part_id, one.holding_id, one.role) == (part_id, holding_id, "main"):
            return one
    return None


def _state(book: Book, plan_id: str) -> PromiseState:
    return "settled" if book.plan[plan_id].state == "being knit" else "kept"
