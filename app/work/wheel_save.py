"""Write down a wheel or spindle, or change what is written of it."""

from sqlmodel import Session

from app.book.wheel import Wheel
from app.store.records import get, load_book, put
from app.work.name_taken import is_taken
from app.work.refusal import Refusal


def wheels(session: Session) -> list[Wheel]:
    """Every wheel and spindle: those in use by name, then those put away."""
    found = load_book(session).wheels
    return sorted(found, key=lambda one: (one.put_away is not None, one.name.casefold(), one.id))


def wheel(session: Session, wheel_id: str) -> Wheel | None:
    """The wheel of that id, if there is one."""
    return get(session, Wheel, wheel_id)


def save_wheel(session: Session, wanted: Wheel) -> None:
    """Add a wheel or put it in the place of its older self; Refusal for a name in use."""
    if is_taken(wanted, load_book(session).wheels):
        raise Refusal("name", f"There is already one called {wanted.name}. Add to the name.")
    put(session, wanted)
