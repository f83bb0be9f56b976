"""Write down a swatch, change what is written of it, put it away or take it out again."""

from dataclasses import replace
from datetime import date

from sqlmodel import Session

from app.book.swatch import Swatch
from app.store.records import load_book, put
from app.work.name_taken import is_taken
from app.work.refusal import Refusal


def save_swatch(session: Session, swatch: Swatch) -> Swatch:
    """Add a swatch or put it in the place of its older self; Refusal for a name already used.

    Garments knit to it keep the numbers they took.
    """
    if is_taken(swatch, load_book(session).swatches):
        text = f"There is already a swatch called {swatch.name}. Give this one another name."
        raise Refusal("name", text)
    put(session, swatch)
    return swatch


def put_swatch_away(session: Session, swatch: Swatch, day: date) -> None:
    """Offer a swatch to no garment any more; what was knit to it still names it."""
    put(session, replace(swatch, put_away=day))


def take_swatch_out(session: Session, swatch: Swatch) -> None:
    """Take a swatch out again that was put away."""
    put(session, replace(swatch, put_away=None))
