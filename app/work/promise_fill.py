"""Let the program propose skeins for a garment, then keep or drop what it proposed."""

from collections.abc import Iterable
from dataclasses import replace

from sqlmodel import Session

from app.book.plan import Promise
from app.book.words import PromiseState
from app.planning import reckon
from app.planning.proposal import propose
from app.store.records import load_book, put, remove


def fill_plan(session: Session, plan_id: str) -> int:
    """Propose skeins for what a plan still lacks, in place of any earlier proposal.

    What was kept or settled is not moved. Answers how many skeins were proposed; KeyError for a
    plan that is gone.
    """
    book = load_book(session)
    old = proposed(book.promises_of.get(plan_id, []))
    for promise in old:
        remove(session, promise)
    without = replace(book, promises=tuple(one for one in book.promises if one not in old))
    new = propose(without, reckon(without), plan_id)
    for promise in new:
        put(session, promise)
    return len(new)


def proposed(promises: Iterable[Promise]) -> list[Promise]:
    """Those that are only proposed."""
    return [one for one in promises if one.state == "proposed"]


def keep_proposed(session: Session, plan_id: str, promise_id: str | None = None) -> int:
    """Keep one proposed promise of a plan, or all of them; answers how many."""
    book = load_book(session)
    state: PromiseState = "settled" if book.plan[plan_id].state == "being knit" else "kept"
    chosen = _chosen(proposed(book.promises_of.get(plan_id, [])), promise_id)
    for promise in chosen:
        put(session, replace(promise, state=state))
    return len(chosen)


def drop_proposed(session: Session, plan_id: str, promise_id: str | None = None) -> int:
    """Drop one proposed promise of a plan, or all of them; answers how many."""
    promises = load_book(session).promises_of.get(plan_id, [])
    chosen = _chosen(proposed(promises), promise_id)
    for promise in chosen:
        remove(session, promise)
    return len(chosen)


def _chosen(promises: list[Promise], promise_id: str | None) -> list[Promise]:
    return [one for one in promises if promise_id in (None, one.id)]
