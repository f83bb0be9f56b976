"""The wool a new skein takes from its fleece, with what is expected to be lost on the way."""

from sqlmodel import Session

from app.book.book import Book
from app.book.fleece import Fleece
from app.book.holding import Holding
from app.book.woolbook import Portion
from app.book.words import WoolState
from app.craft.figure import Figure
from app.craft.fleece import wool_for
from app.planning.fleeces import fleece_yield, losses_for
from app.store.records import get
from app.store.skein_find import balance_of, wool_of_fleece
from app.work.fleece_step import STAGE
from app.work.reckoning import Known, current

LEEWAY = 1.25
"""How far the expected wool may exceed what the fleece holds before the skein is doubted: losses
are expectations, and the last skein of a fleece seldom meets them (practice)."""

READY: WoolState = "carded"
"""The state of wool that is spun although no state was noted."""


class TooLittleWool(Exception):
    """Met where a fleece holds less than a skein would take of it; grams, and the wool's state."""

    def __init__(self, held_g: float, needed_g: float, state: str) -> None:
        super().__init__(f"{held_g} g {state} held, {needed_g} g needed")
        self.held_g = held_g
        self.needed_g = needed_g
        self.state = state


def taken_from(session: Session, fleece_id: str, yarn_mg: int) -> tuple[Portion, ...]:
    """The wool to take off a fleece for so much finished yarn, in mg: what is nearest to yarn
    first, through the losses of every step still ahead of it, and at most all it holds.
    TooLittleWool where it plainly holds less."""
    fleece, wool = get(session, Fleece, fleece_id), _ready_first(session, fleece_id)
    known = current(session)
    if fleece is None or not wool:
        raise TooLittleWool(0.0, yarn_mg / 1000, READY)
    taken, left = [], float(yarn_mg)
    for holding in wool:
        held_mg, per_yarn = balance_of(session, holding.id).mg, _per_yarn(known, fleece, holding)
        portion = Portion(holding, min(round(left * per_yarn), held_mg))
        left = max(0.0, left - portion.mg / per_yarn)
        taken.append(portion)
    held_mg = sum(balance_of(session, one.id).mg for one in wool)
    if yarn_mg > held_mg or yarn_mg > (yarn_mg - left) * LEEWAY:
        needed_mg = held_mg + left * _per_yarn(known, fleece, wool[-1])
        states = " and ".join(dict.fromkeys(one.state or READY for one in wool))
        raise TooLittleWool(held_mg / 1000, needed_mg / 1000, states)
    return tuple(one for one in taken if one.mg > 0)


def _ready_first(session: Session, fleece_id: str) -> list[Holding]:
    found = wool_of_fleece(session, fleece_id)
    some = [one for one in found if balance_of(session, one.id).mg > 0] or found[:1]
    return sorted(some, key=lambda one: (one.kind != "bobbin", -STAGE[one.state or READY]))


def _per_yarn(known: Known, fleece: Fleece, holding: Holding) -> float:
    """Grams of this wool that become a gram of finished yarn."""
    state = holding.state or READY
    learnt = known.reckoning.learnt
    share, _ = fleece_yield(fleece, learnt)
    losses = losses_for(state, known.book.settings.steps, learnt, fleece)
    return wool_for(Figure(1.0, "g"), state, share, losses).value


def fleece_holding(book: Book, fleece_id: str) -> Holding | None:
    """The holding that a fleece's own wool lies in, put away or not."""
    own = (one for one in book.holdings if one.fleece_id == fleece_id and one.kind == "fleece")
    return next(own, None)
