"""Write down a garment plan, or change one."""

from dataclasses import replace

from sqlmodel import Session

from app.book.plan import Plan
from app.store.records import load_book, put
from app.work.plan_order import next_priority


def add_plan(session: Session, plan: Plan) -> Plan:
    """Add a plan after all others; answers the plan with its priority."""
    placed = replace(plan, priority=next_priority(load_book(session).plans))
    put(session, placed)
    return placed


def change_plan(session: Session, plan: Plan) -> None:
    """Put a plan in the place of its older self.

    A plan that is now being knit has its kept promises settled: a re-plan no longer moves them.
    """
    put(session, plan)
    if plan.state == "being knit":
        _settle(session, plan.id)


def _settle(session: Session, plan_id: str) -> None:
    for promise in load_book(session).promises_of.get(plan_id, []):
        if promise.state == "kept":
            put(session, replace(promise, state="settled"))
