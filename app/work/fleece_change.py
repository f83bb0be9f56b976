"""Change what is written of a fleece: anything but its weight and state."""

from dataclasses import replace

from sqlmodel import Session

from app.book.fleece import Fleece
from app.book.holding import Holding
from app.store.records import put
from app.work.fleece_name import free_code


def change_fleece(session: Session, fleece: Fleece, holding: Holding) -> None:
    """Put a fleece and its holding in the place of their older selves.

    The holding takes the fleece's name and colour. Refusal for a name something else has.
    """
    code = free_code(session, fleece.name, holding.id)
    put(session, fleece)
    named = replace(holding, code=code, colour=fleece.colour, colour_name=fleece.colour_name)
    put(session, named)
