"""Save a garment planned from measurements: the plan, its parts, and what stays promised."""

from sqlmodel import Session

from app.book.plan import Plan
from app.planning.redraw import Redrawn, redraw
from app.store.records import load_book, put, remove
from app.work.plan_save import add_plan, change_plan


def save_design(session: Session, plan: Plan) -> Redrawn:
    """Put a plan with its design, new or in the place of its older self, and draw its parts.

    Answers what became of its parts and promises. ValueError, in words, for a garment that cannot
    be; then nothing is saved.
    """
    done = redraw(load_book(session), plan)
    save_redrawn(session, done)
    return done


def save_redrawn(session: Session, done: Redrawn) -> None:
    """Put a plan, new or in the place of its older self, with its parts and promises as drawn."""
    book, plan = load_book(session), done.plan
    if plan.id in book.plan:
        change_plan(session, plan)
    else:
        add_plan(session, plan)
    for promise in done.freed:
        remove(session, promise)
    for part in done.parts:
        put(session, part)
    before = {one.id: one for one in book.promises_of.get(plan.id, [])}
    for promise in done.kept:
        if promise.part_id != before[promise.id].part_id:
            put(session, promise)
    _take_out(session, done, {one.id for one in book.parts_of.get(plan.id, [])})


def _take_out(session: Session, done: Redrawn, were: set[str]) -> None:
    """Parts that go, and those another id took the place of."""
    parts = load_book(session).parts_of[done.plan.id]
    stay = {one.id for one in done.parts}
    for part in parts:
        if part.id in were - stay:
            remove(session, part)
