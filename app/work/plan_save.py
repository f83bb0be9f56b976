"""Write down a garment plan, or change one."""

from dataclasses import replace

from sqlmodel import Session

from app.book.plan import Plan, Promise
from app.book.words import OPEN_STATES, PromiseState
from app.store.records import load_book, put, remove
from app.work.knit_course import renew_cast_on
from app.work.plan_order import next_priority


def add_plan(session: Session, plan: Plan) -> Plan:
    """Add a plan after all others; answers the plan with its priority."""
    placed = replace(plan, priority=next_priority(load_book(session).plans))
    put(session, placed)
    return placed


def change_plan(session: Session, plan: Plan) -> int:
    """Put a plan in the place of its older self; answers how many promises that freed.

    What is promised to a plan being knit is settled: a re-plan no longer moves it. A plan that is
    finished or put away holds nothing back from the shelf.
    """
    was = load_book(session)
    put(session, plan)
    renew_cast_on(session, was, plan.id)
    promises = load_book(session).promises_of.get(plan.id, [])
    if plan.state not in OPEN_STATES:
        for promise in promises:
            remove(session, promise)
        return len(promises)
    for promise in promises:
        _settle(session, promise, plan.state == "being knit")
    return 0


def _settle(session: Session, promise: Promise, being_knit: bool) -> None:
    state: PromiseState = "settled" if being_knit else "kept"
    if promise.state not in ("proposed", state):
        put(session, replace(promise, state=state))
