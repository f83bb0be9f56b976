"""A flock to test with: one raw fleece on the shelf, found again as it now stands."""

from datetime import date

from sqlmodel import Session

from app.book.fleece import Fleece
from app.book.holding import Holding
from app.book.words import WoolState
from app.store.records import load_book
from app.work.fleece_add import NewFleece, add_fleece
from app.work.fleece_step import reading_state
from app.work.skein_readings import Weight
from app.work.skein_spin import fleece_holding

DAY = date(2026, 5, 1)
BRAMBLE = Fleece("bramble", "Bramble", "Cheviot")


def weight(grams: float, state: WoolState = "raw") -> Weight:
    return Weight(round(grams * 1000), f"{grams}", "g", reading_state(state))


def a_raw_fleece(session: Session, grams: float = 2000, state: WoolState = "raw") -> int:
    """Add Bramble; answers the number of the event that brought it in."""
    new = NewFleece(BRAMBLE, weight(grams, state), state, DAY, place="loft")
    return add_fleece(session, new).seq


def now(session: Session) -> Holding:
    found = fleece_holding(load_book(session), "bramble")
    assert found is not None
    return found


def grams(session: Session, holding_id: str = "") -> float:
    balances = load_book(session).balances
    wanted = holding_id or now(session).id
    return balances[wanted].mg / 1000 if wanted in balances else 0.0
