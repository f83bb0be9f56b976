"""Strike out an observation the program learns from, let one in that was set aside, or neither."""

from datetime import date

from sqlmodel import Session

from app.book.mark import Mark
from app.book.words import Verdict
from app.planning.learning.observed import Observation
from app.store.records import get, put, remove
from app.work.reckoning import current


def set_mark(
    session: Session, key: str, verdict: Verdict | None, day: date, why: str = ""
) -> Observation:
    """Mark the observation of that key, or take its mark off with None; answers it.

    KeyError for a key that no observation has.
    """
    told = current(session).reckoning.learnt.told
    found = {one.observation.key: one.observation for one in told}[key]
    old = get(session, Mark, key)
    if verdict is not None:
        put(session, Mark(key, verdict, day, why))
    elif old is not None:
        remove(session, old)
    return found
