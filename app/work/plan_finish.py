"""Finish a garment: what was promised to it is knit in, or goes back to the shelf."""

from dataclasses import replace
from datetime import date

from sqlmodel import Session

from app.book.plan import Plan
from app.planning.supply import stock
from app.planning.yarns import Lots
from app.store.records import load_book, put, remove
from app.work.promise_use import use_promised


def finish_plan(session: Session, plan: Plan, all_used: bool, day: date) -> None:
    """The plan is finished on `day`; with `all_used` its promises are knit in, else freed."""
    if all_used:
        use_all_promised(session, plan.id, day)
    for promise in load_book(session).promises_of.get(plan.id, []):
        remove(session, promise)
    put(session, replace(plan, state="finished"))


def use_all_promised(session: Session, plan_id: str, day: date) -> None:
    """Knit everything a plan is promised, as far as the skeins still hold it."""
    for promise in load_book(session).promises_of.get(plan_id, []):
        if promise.holding_id in stock(Lots(load_book(session))):
            use_promised(session, promise, promise.mm, day)
