"""Wool that lies drying, and how it is entered once it is dry."""

from datetime import date

from sqlmodel import Session

from app.book.book import Book
from app.book.fleece import Fleece
from app.book.holding import Holding
from app.book.reading import Reading
from app.book.weighed_as import weighed_as
from app.book.words import WoolState
from app.planning.drying import Drying, damp_weighings
from app.planning.learning import learn
from app.store.records import remove
from app.work.fleece_doubt import Doubt, doubt_of
from app.work.fleece_weigh import Weighing
from app.work.skein_readings import Weight


def take_out_last(session: Session, book: Book, wool: Holding) -> Reading | None:
    """Take out the last damp weighing, a slip of the scale or the pen; None where there is none.
    It moved no gram, so the wool book knows nothing of it."""
    weighings = damp_weighings(book, wool)
    if not weighings:
        return None
    remove(session, weighings[-1])
    return weighings[-1]


def state_when_dry(book: Book, wool: Holding) -> WoolState:
    """Washed wool is scoured; what was further already, such as dyed top, is what it was."""
    before = weighed_as(book, wool)
    clean: tuple[WoolState, ...] = ("carded", "combed", "part spun")
    return next((one for one in clean if one == before), "scoured")


def dried(book: Book, wool: Holding, day: date) -> Weighing | None:
    """The last damp weighing as one of dry wool; None before it was weighed."""
    weighings = damp_weighings(book, wool)
    if not weighings:
        return None
    last = weighings[-1]
    weight = Weight(last.value, last.typed, last.unit, minute=last.minute)
    return Weighing(weight, state_when_dry(book, wool), day)


def doubt_when_dry(book: Book, fleece: Fleece, one: Drying, weighing: Weighing) -> Doubt | None:
    """What to ask about before dry wool is entered, by what it was before it was wetted."""
    before = weighed_as(book, one.holding) or weighing.state
    if one.before_g is None:
        return None
    taken, steps = round(1000 * one.before_g), book.settings.steps
    weighed = weighing.weight.mg
    return doubt_of(fleece, steps, before, weighing.state, taken, weighed, learn(book))
