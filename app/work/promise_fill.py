"""Let the program propose skeins for a garment, then keep or drop what it proposed."""

from collections.abc import Iterable
from dataclasses import replace

from sqlmodel import Session

from app.book.book import Book
from app.book.plan import Promise
from app.book.words import PromiseState
from app.planning import proposal, reckon
from app.planning.assign import Proposal, propose
from app.planning.assign_moved import moved
from app.store.records import load_book, put, remove
from app.work.assign_known import proposed_to, remember_proposal


def fill_plan(session: Session, plan_id: str) -> int:
    """Propose skeins for what a plan still lacks, in place of any earlier proposal.

    What was kept or settled is not moved. Answers how many skeins were proposed; KeyError for a
    plan that is gone.
    """
    book = without_proposed(load_book(session), plan_id)
    try:
        found = propose(book, reckon(book), plan_id)
    except ImportError:  # no solver on this machine
        return _put_in_place(session, plan_id, proposal.propose(book, reckon(book), plan_id))
    return put_proposal(session, plan_id, found)


def put_proposal(session: Session, plan_id: str, found: Proposal) -> int:
    """Put a proposal in the place of what was proposed before, and remember what it moved."""
    book = load_book(session)
    old, bare = proposed_to(book, plan_id), without_proposed(book, plan_id)
    moves = moved(old, found.promises, bare, reckon(bare))
    remember_proposal(session, plan_id, found, moves)
    return _put_in_place(session, plan_id, found.promises)


def without_proposed(book: Book, plan_id: str) -> Book:
    """The book with nothing proposed to a plan."""
    old = proposed_to(book, plan_id)
    return replace(book, promises=tuple(one for one in book.promises if one not in old))


def _put_in_place(session: Session, plan_id: str, new: Iterable[Promise]) -> int:
    for promise in proposed_to(load_book(session), plan_id):
        remove(session, promise)
    found = list(new)
    for promise in found:
        put(session, promise)
    return len(found)


def keep_proposed(session: Session, plan_id: str, promise_id: str | None = None) -> int:
    """Keep one proposed promise of a plan, or all of them; answers how many."""
    book = load_book(session)
    state: PromiseState = "settled" if book.plan[plan_id].state == "being knit" else "kept"
    chosen = _chosen(proposed_to(book, plan_id), promise_id)
    for promise in chosen:
        put(session, replace(promise, state=state))
    return len(chosen)


def drop_proposed(session: Session, plan_id: str, promise_id: str | None = None) -> int:
    """Drop one proposed promise of a plan, or all of them; answers how many."""
    chosen = _chosen(proposed_to(load_book(session), plan_id), promise_id)
    for promise in chosen:
        remove(session, promise)
    return len(chosen)


def _chosen(promises: list[Promise], promise_id: str | None) -> list[Promise]:
    return [one for one in promises if promise_id in (None, one.id)]
