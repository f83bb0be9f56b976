"""Change what is written of a skein: its code, yarn, colour, place and notes, never its amount."""

from sqlmodel import Session

from app.book.holding import Holding
from app.store.records import put
from app.store.skein_find import holder_of
from app.work.refusal import Refusal


def change_skein(session: Session, skein: Holding) -> None:
    """Put a skein in the place of its older self; Refusal for a code another holding has."""
    holder = holder_of(session, skein.code)
    if holder not in (None, skein.id):
        raise Refusal("code", f"{skein.code} is already in use. Choose another code.")
    put(session, skein)
