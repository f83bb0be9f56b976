"""The wool a new skein takes from its fleece, with what is expected to be lost on the way."""

from sqlmodel import Session

from app.book.book import Book
from app.book.fleece import Fleece
from app.book.holding import Holding
from app.book.woolbook import Portion
from app.craft.figure import Figure
from app.craft.fleece import wool_for
from app.planning.fleeces import fleece_yield, losses_for
from app.store.records import get
from app.store.skein_find import balance_of, wool_of_fleece
from app.work.settings_read import settings_now

LEEWAY = 1.25
"""How far the expected wool may exceed what the fleece holds before the skein is doubted: losses
are expectations, and the last skein of a fleece seldom meets them (practice)."""

READY = "carded"
"""The state of wool that is spun although no state was noted."""


class TooLittleWool(Exception):
    """Met where a fleece holds less than a skein would take of it; grams, and the wool's state."""

    def __init__(self, held_g: float, needed_g: float, state: str) -> None:
        super().__init__(f"{held_g} g {state} held, {needed_g} g needed")
        self.held_g = held_g
        self.needed_g = needed_g
        self.state = state


def taken_from(session: Session, fleece_id: str, yarn_mg: int) -> Portion:
    """The wool to take off a fleece for so much finished yarn, in mg: through the losses of every
    step still ahead of it, and at most all it holds. TooLittleWool where it plainly holds less."""
    fleece, holding = get(session, Fleece, fleece_id), wool_of_fleece(session, fleece_id)
    if fleece is None or holding is None:
        raise TooLittleWool(0.0, yarn_mg / 1000, READY)
    held_mg = balance_of(session, holding.id).mg
    needed_mg = _needed_mg(session, fleece, holding, yarn_mg)
    if yarn_mg > held_mg or needed_mg > held_mg * LEEWAY:
        raise TooLittleWool(held_mg / 1000, needed_mg / 1000, holding.state or READY)
    return Portion(holding, min(needed_mg, held_mg))


def _needed_mg(session: Session, fleece: Fleece, holding: Holding, yarn_mg: int) -> int:
    state = holding.state or READY
    share, _ = fleece_yield(fleece)
    losses = losses_for(state, settings_now(session).steps)
    return round(1000 * wool_for(Figure(yarn_mg / 1000, "g"), state, share, losses).value)


def fleece_holding(book: Book, fleece_id: str) -> Holding | None:
    """The holding that a fleece's own wool lies in, put away or not."""
    own = (one for one in book.holdings if one.fleece_id == fleece_id and one.kind == "fleece")
    return next(own, None)
