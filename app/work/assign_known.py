"""What is known of the last proposal for each plan, as long as the program runs.

It is kept beside the data, not in it: without it the proposal stands as it is, only how far it is
from the best is no longer known.
"""

from dataclasses import dataclass
from threading import Lock

from sqlmodel import Session

from app.book.book import Book
from app.book.plan import Promise
from app.planning.assign import Proposal
from app.planning.assign_moved import Move

MOST = 6
"""So many plans are remembered, the latest ones."""


@dataclass(frozen=True, slots=True)
class Kept:
    """A proposal with what it moved of the one before."""

    proposal: Proposal
    moves: tuple[Move, ...]


_kept: dict[tuple[str, str], Kept] = {}
_one_at_a_time = Lock()


def remember_proposal(
    session: Session, plan_id: str, proposal: Proposal, moves: tuple[Move, ...]
) -> None:
    """Keep the latest proposal for a plan."""
    with _one_at_a_time:
        _kept.pop((place(session), plan_id), None)
        _kept[place(session), plan_id] = Kept(proposal, moves)
        for oldest in list(_kept)[:-MOST]:
            del _kept[oldest]


def kept_proposal(session: Session, book: Book, plan_id: str) -> Kept | None:
    """The latest proposal for a plan, if nothing of it was kept, dropped or changed since."""
    kept = _kept.get((place(session), plan_id))
    if kept is None or by_id(kept.proposal.promises) != by_id(proposed_to(book, plan_id)):
        return None
    return kept


def proposed_to(book: Book, plan_id: str) -> list[Promise]:
    """What is only proposed to a plan."""
    return [one for one in book.promises_of.get(plan_id, []) if one.state == "proposed"]


def by_id(promises: list[Promise] | tuple[Promise, ...]) -> dict[str, Promise]:
    return {one.id: one for one in promises}


def place(session: Session) -> str:
    """Which data this is: several may be open in one process."""
    return str(session.connection().engine.url)
