"""Look longer for a better proposal, beside the program; what is found is offered, never put in.

One search at a time: beginning another ends the one before.
"""

from dataclasses import dataclass
from threading import Lock

from sqlmodel import Session

from app.book.book import Book
from app.planning import reckon
from app.planning.assign import Proposal, proposal_of
from app.planning.assign_problem import ask
from app.planning.assign_search import DEEP, Begun, Told, search_on
from app.planning.proposal import LEAST_M
from app.store.records import load_book
from app.work.apart import Apart, apart
from app.work.assign_known import kept_proposal, place
from app.work.promise_fill import put_proposal, without_proposed
from app.work.reckoning import current

AT_ONCE = 900
"""Up to so many pairs of skein and part are divided while she waits: well within a second."""


@dataclass(frozen=True, slots=True)
class Search:
    """A search for a plan: the latest it told, and whether it still goes on."""

    told: Told | None
    going_on: bool


class NothingBetter(Exception):
    """There is no better division to take, or it was found for another shelf than it is now."""


_running: dict[tuple[str, str], Apart] = {}
_one_at_a_time = Lock()


def too_long_to_wait(session: Session, plan_id: str) -> bool:
    """Whether a plan has so many skeins and parts that dividing them takes more than a second."""
    known = current(session)
    parts = known.reckoning.plan(plan_id).parts
    lacking = sum(one.need.value - one.used_m - one.promised_m >= LEAST_M for one in parts)
    skeins = sum(one.free_m >= LEAST_M for one in known.reckoning.shelf.values())
    if lacking * skeins <= AT_ONCE:
        return False
    problem = ask(known.book, known.reckoning, plan_id).problem
    return len(problem.parts) * len(problem.skeins) > AT_ONCE


def look_longer(session: Session, plan_id: str) -> None:
    """Begin a search from the proposal that stands, or for a first one where none does."""
    book = load_book(session)
    kept = kept_proposal(session, book, plan_id)
    begun = Begun(kept.proposal.share, kept.proposal.solved.groups) if kept else None
    with _one_at_a_time:
        for running in _running.values():
            running.stop()
        _running.clear()
        bare = without_proposed(book, plan_id)
        _running[place(session), plan_id] = apart(search_on, bare, plan_id, begun, DEEP)


def search_for(session: Session, plan_id: str) -> Search | None:
    """The search for a plan as it stands; None where none was begun."""
    with _one_at_a_time:
        running = _running.get((place(session), plan_id))
        if running is None:
            return None
        running.listen()
        going_on = not running.ended and not (running.heard and running.heard.done)
        return Search(running.heard, going_on)


def stop_looking(session: Session, plan_id: str) -> None:
    """End the search for a plan; what it has found can still be taken."""
    with _one_at_a_time:
        if running := _running.get((place(session), plan_id)):
            running.stop()


def forget_search(session: Session, plan_id: str) -> None:
    """End the search for a plan and let go of what it found."""
    with _one_at_a_time:
        if running := _running.pop((place(session), plan_id), None):
            running.stop()


def better_found(session: Session, book: Book, plan_id: str) -> Told | None:
    """What a search has found that costs less than the proposal that stands; None otherwise."""
    search, kept = search_for(session, plan_id), kept_proposal(session, book, plan_id)
    if search is None or search.told is None:
        return None
    if kept is None or search.told.solved.value < kept.proposal.value - LEAST_COST:
        return search.told
    return None


LEAST_COST = 0.01
"""A division that costs less by no more than this is no better."""


def take_better(session: Session, plan_id: str) -> int:
    """Put what a search has found in the place of what is proposed; answers how many skeins.

    NothingBetter where there is nothing, or where the shelf or the plan is another than it was.
    """
    book = load_book(session)
    told = better_found(session, book, plan_id)
    if told is None:
        raise NothingBetter
    found = _on_this_shelf(without_proposed(book, plan_id), plan_id, told)
    forget_search(session, plan_id)
    return put_proposal(session, plan_id, found)


def _on_this_shelf(book: Book, plan_id: str, told: Told) -> Proposal:
    asked = ask(book, reckon(book), plan_id)
    if asked.surer(told.share) != told.problem:
        raise NothingBetter
    return proposal_of(book, asked, told.share, told.solved)
