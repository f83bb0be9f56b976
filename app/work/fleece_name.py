"""A fleece's name is also the label of its holding: one holding to a label."""

from itertools import chain, count

from sqlmodel import Session

from app.book.book import Book
from app.book.holding import Holding
from app.book.words import WoolState
from app.store.skein_find import holder_of
from app.work.refusal import Refusal


def free_code(session: Session, name: str, holding_id: str | None) -> str:
    """The label for a fleece of that name; Refusal where another holding has it."""
    if holder_of(session, name) not in (None, holding_id):
        raise Refusal("name", f"Something else is called {name} already. Add to the name.")
    return name


def next_code(session: Session, stem: str) -> str:
    """A label nothing else has: the stem, or the stem and the next number."""
    numbered = (f"{stem} {number}" for number in count(2))
    return next(one for one in chain([stem], numbered) if holder_of(session, one) is None)


def code_as(session: Session, book: Book, wool: Holding, state: WoolState) -> str:
    """What wool is called once it is in a state: a part named by its state is named by the new
    one, "Bramble, carded" for "Bramble, scoured"; any other keeps its label."""
    fleece = book.fleece.get(wool.fleece_id or "")
    if wool.kind != "fibre" or fleece is None or state == wool.state:
        return wool.code
    stem = f"{fleece.name}, {wool.state}"
    rest = wool.code.removeprefix(stem)
    named_so = wool.code.startswith(stem) and (not rest or rest.strip().isdigit())
    return next_code(session, f"{fleece.name}, {state}") if named_so else wool.code
