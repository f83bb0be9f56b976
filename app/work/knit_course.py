"""Change course on the needles: another size, needle or yarn from here on; what is knit stays."""

from dataclasses import replace

from sqlmodel import Session

from app.book.book import Book
from app.book.ids import new_id
from app.book.knitting import CastOn, Settled
from app.book.plan import Part, Plan
from app.planning.knitting.cast_on import LOOP
from app.planning.knitting.done import rows_done
from app.planning.knitting.split import Otherwise, split
from app.planning.needs import needs_of
from app.planning.picture_drawn import drawn_pieces
from app.planning.yarns import Lots
from app.store.records import load_book, put, remove


class CannotTurn(Exception):
    """Met where a part cannot be knit otherwise from here on; the message says why."""


def knit_otherwise(session: Session, plan_id: str, part_id: str, how: Otherwise) -> Part:
    """From the row that is done on, a part is knit otherwise: what is to come becomes a part of
    its own, after it, with what is promised. Answers that part; CannotTurn where that cannot be."""
    book = load_book(session)
    plan, part = book.plan[plan_id], book.part[part_id]
    rows = _row_reached(book, part)
    (need,) = needs_of(plan, [part], Lots(book))
    try:
        knit, rest = split(need, rows, how, new_id(), drawn_pieces(plan).get(part_id))
    except ValueError:
        raise CannotTurn(
            "Nothing of it is knit yet, or all of it: change the part itself."
        ) from None
    for one in book.parts_of[plan_id]:
        if one.position > part.position:
            put(session, replace(one, position=one.position + 1))
    put(session, knit)
    put(session, rest)
    _promised_to(session, book, part, rest, keeps=how.yarn_id is None)
    renew_cast_on(session, book, plan_id)
    return rest


def renew_cast_on(session: Session, was: Book, plan_id: str) -> None:
    """A part whose gauge or yarn was changed on purpose since the book `was` keeps the number that
    follows from it, and a new part gets one; the others keep what they were cast on with."""
    book = load_book(session)
    plan = book.plan.get(plan_id)
    if (
        plan is None
        or plan.cast_on is None
        or plan.state != "being knit"
        or plan_id not in was.plan
    ):
        return
    before, now = _loops(was, was.plan[plan_id]), _loops(book, plan)
    changed = {one: loop for one, loop in now.items() if before.get(one) != loop}
    if changed:
        settled = (Settled(LOOP + one, *loop) for one, loop in changed.items())
        names = {LOOP + one for one in changed}
        kept = (one for one in plan.cast_on.numbers if one.name not in names)
        put(session, replace(plan, cast_on=CastOn(plan.cast_on.day, (*kept, *settled))))


def _loops(book: Book, plan: Plan) -> dict[str, tuple[float, float]]:
    """The yarn in a stitch of each part by its gauge of now, in cm, and how unsure it is."""
    fresh = replace(plan, cast_on=None)
    needs = needs_of(fresh, book.parts_of.get(plan.id, []), Lots(book))
    return {one.part.id: (one.loop.value, one.loop.u) for one in needs if one.loop is not None}


def _row_reached(book: Book, part: Part) -> int:
    done = rows_done(book, part.plan_id)
    reached = {done.get((part.id, piece), 0) for piece in range(1, part.copies + 1)}
    if part.sequence is not None:
        raise CannotTurn("Yarns take turns in it: end that first, then change the rest of it.")
    if len(reached) > 1:
        raise CannotTurn("Its pieces are at different rows: knit them to the same row first.")
    return reached.pop()


def _promised_to(session: Session, book: Book, old: Part, new: Part, keeps: bool) -> None:
    """What is promised goes to the rows to come; in another yarn, that of the main role is free."""
    for promise in book.promises_of.get(old.plan_id, []):
        if promise.part_id == old.id and (keeps or promise.role != "main"):
            put(session, replace(promise, part_id=new.id))
        elif promise.part_id == old.id:
            remove(session, promise)
