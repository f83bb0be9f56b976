"""Wool that lies drying, and how it is entered once it is dry."""

from datetime import date

from app.book.book import Book
from app.book.fleece import Fleece
from app.book.holding import Holding
from app.book.reading import Reading
from app.book.weighed_as import drying_since, weighed_as
from app.book.words import WoolState
from app.planning.drying import Drying
from app.planning.learning import learn
from app.work.fleece_doubt import Doubt, doubt_of
from app.work.fleece_weigh import Weighing
from app.work.skein_readings import Weight


def damp_weighings(book: Book, wool: Holding) -> tuple[Reading, ...]:
    """The weighings of wool as it dries, oldest first."""
    begun = drying_since(book, wool)
    return tuple(
        one
        for one in book.readings_of.get(wool.id, [])
        if one.wool == "damp" and one.kind == "mass" and (begun is None or one.day >= begun.day)
    )


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
