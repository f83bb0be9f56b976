"""Write down someone to knit for, or change what is written of them."""

from sqlmodel import Session

from app.book.person import Person
from app.store.records import get, load_book, put
from app.work.name_taken import is_taken
from app.work.refusal import Refusal


def people(session: Session) -> list[Person]:
    """Everyone in the book, by name."""
    return sorted(load_book(session).people, key=lambda one: (one.name.casefold(), one.id))


def person(session: Session, person_id: str) -> Person | None:
    """The person of that id, if there is one."""
    return get(session, Person, person_id)


def save_person(session: Session, wanted: Person) -> None:
    """Add someone or put them in the place of their older self; Refusal for a name in use."""
    if is_taken(wanted, load_book(session).people):
        raise Refusal("name", f"There is already someone called {wanted.name}. Add to the name.")
    put(session, wanted)
