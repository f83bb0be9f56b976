"""Make a garment again, from the same yarn or another."""

from sqlmodel import Session

from app.book.ids import new_id
from app.book.plan import Plan
from app.planning.again import again
from app.store.records import load_book, put
from app.work.plan_save import add_plan


def make_again(session: Session, plan: Plan, yarn_id: str | None) -> Plan:
    """A new plan after all others; answers it."""
    made, parts = again(load_book(session), plan, new_id(), yarn_id)
    placed = add_plan(session, made)
    for part in parts:
        put(session, part)
    return placed
