"""A whole book into an empty database."""

from sqlalchemy import select
from sqlmodel import Session

from app.book.book import Book
from app.book.errand import Errand
from app.book.fleece import Fleece
from app.book.holding import Holding
from app.book.knitting import Progress, Weighing
from app.book.mark import Mark
from app.book.pattern import Pattern
from app.book.person import Person
from app.book.photo import Photo
from app.book.plan import Part, Plan, Promise
from app.book.reading import Reading
from app.book.settings import Settings
from app.book.stint import Stint
from app.book.swatch import Swatch
from app.book.wheel import Wheel
from app.book.words import SINKS
from app.book.yarn import Yarn
from app.store.balance import rebuild_balances
from app.store.errors import Refused, plain_words
from app.store.events import write_events
from app.store.kept import ROWS, table_of, write
from app.store.version import mark_changed


def is_empty(session: Session) -> bool:
    """True while nothing has been written down; settings do not count."""
    connection = session.connection()
    for kind in ROWS.keys() - {Settings}:
        key = table_of(kind).c.id
        if connection.execute(select(key).where(key.not_in(SINKS)).limit(1)).first():
            return False
    return True


@plain_words()
def fill(session: Session, book: Book) -> None:
    """Write down every record of a book; Refused where something is there already."""
    if not is_empty(session):
        raise Refused("There are records here already. Import into an empty folder instead.")
    for kind, records in _in_order_of_links(book).items():
        write(session, kind, records)
    write_events(session, sorted(book.events, key=lambda event: event.seq))
    rebuild_balances(session)
    mark_changed(session)


def _in_order_of_links(book: Book) -> dict[type, tuple[object, ...]]:
    found: dict[type, tuple[object, ...]] = {
        Settings: (book.settings,),
        Person: book.people,
        Fleece: book.fleeces,
        Yarn: book.yarns,
        Swatch: book.swatches,
        Pattern: book.patterns,
        Plan: book.plans,
        Part: book.parts,
        Holding: book.holdings,
        Reading: book.readings,
        Promise: book.promises,
        Errand: book.errands,
        Wheel: book.wheels,
        Stint: book.stints,
        Mark: book.marks,
        Photo: book.photos,
        Progress: book.progress,
        Weighing: book.weighings,
    }
    return {kind: found[kind] for kind in ROWS}
