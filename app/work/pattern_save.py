"""Write down a written pattern, change what is written of it, put it away or take it out again."""

from dataclasses import replace
from datetime import date

from sqlmodel import Session

from app.book.pattern import Pattern
from app.store.records import load_book, put
from app.work.name_taken import is_taken
from app.work.refusal import Refusal


def save_pattern(session: Session, pattern: Pattern) -> Pattern:
    """Add a pattern or put it in the place of its older self; Refusal for a name already used.

    Garments knit from it keep the parts they took.
    """
    if is_taken(pattern, load_book(session).patterns):
        text = f"There is already a pattern called {pattern.name}. Give this one another name."
        raise Refusal("name", text)
    put(session, pattern)
    return pattern


def put_pattern_away(session: Session, pattern: Pattern, day: date) -> None:
    """Offer a pattern to no garment any more; what was knit from it still names it."""
    put(session, replace(pattern, put_away=day))


def take_pattern_out(session: Session, pattern: Pattern) -> None:
    """Take a pattern out again that was put away."""
    put(session, replace(pattern, put_away=None))
