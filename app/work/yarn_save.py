"""Write down a yarn, or change one: made of skeins, or still to be spun or bought."""

from sqlmodel import Session

from app.book.yarn import Yarn
from app.store.records import put
from app.store.skein_find import yarn_called
from app.work.refusal import Refusal


def save_yarn(session: Session, yarn: Yarn) -> Yarn:
    """Add a yarn or put it in the place of its older self; Refusal for a name already used."""
    other = yarn_called(session, yarn.name)
    if other not in (None, yarn.id):
        raise Refusal(
            "name", f"There is already a yarn called {yarn.name}. Give this one another name."
        )
    put(session, yarn)
    return yarn
