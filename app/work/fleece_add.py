"""Add a fleece: its record, its holding, the weighing, and the event that brings it in."""

from dataclasses import dataclass
from datetime import date

from sqlmodel import Session

from app.book import woolbook
from app.book.event import Event
from app.book.fleece import Fleece
from app.book.holding import Holding
from app.book.ids import new_id
from app.book.woolbook import Portion
from app.book.words import WoolState
from app.store.records import post, put
from app.work.fleece_name import free_code
from app.work.skein_readings import Weight, mass_reading


@dataclass(frozen=True, slots=True)
class NewFleece:
    """A fleece as it comes in: what it is, in which state it was weighed, where it lies, whether
    `apart` from other wool, and when it is to be looked at for moth."""

    fleece: Fleece
    weight: Weight
    state: WoolState
    day: date
    place: str = ""
    apart: bool = False
    look_again: date | None = None


def add_fleece(session: Session, new: NewFleece) -> Event:
    """Put a fleece on the shelf; Refusal for a name another fleece or skein goes by."""
    code = free_code(session, new.fleece.name, None)
    holding = Holding(
        id=new_id(),
        kind="fleece",
        code=code,
        fleece_id=new.fleece.id,
        state=new.state,
        day=new.day,
        colour=new.fleece.colour,
        colour_name=new.fleece.colour_name,
        place=new.place,
        apart=new.apart,
        look_again=new.look_again,
    )
    put(session, new.fleece)
    put(session, holding)
    put(session, mass_reading(holding.id, new.weight, new.day))
    entry = woolbook.arrive((Portion(holding, new.weight.mg),))
    return post(session, entry.kind, new.day, entry.lines)
