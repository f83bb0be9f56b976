"""Undo a change of garments, parts, promises, photos, lines of the work list, what was noted on the
needles, or of what is written of a fleece or a skein: all of it, or nothing.

What changed is found by comparing the book before and after. It is kept in memory, the last MOST
changes of each book; a program that was started anew has nothing to undo.
"""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date

from sqlmodel import Session

from app.book.book import Book
from app.book.errand import Errand
from app.book.errors import CannotUndo
from app.book.fleece import Fleece
from app.book.holding import Holding
from app.book.ids import new_id
from app.book.knitting import Progress, Weighing
from app.book.mark import Mark
from app.book.photo import Photo
from app.book.plan import Part, Plan, Promise
from app.book.stint import Stint
from app.store.records import load_book, post, put, remove
from app.work.event_undo import undo_event
from app.work.reckoning import current

Written = Fleece | Holding
"""What is written of wool can be put back as it was; the wool itself has its history."""

Noted = Progress | Weighing | Stint | Mark
"""What was noted while knitting, and about what was learned."""

OfPlan = Part | Promise | Photo | Progress | Weighing | Stint

Record = Plan | Part | Promise | Errand | Photo | Noted | Written
Key = tuple[type[Record], str]

ORDER: tuple[type[Record], ...] = (
    *(Fleece, Holding, Plan, Part, Promise, Errand, Photo),
    *(Progress, Weighing, Stint, Mark),
)
"""Every record after those it points to."""

MOST = 50


@dataclass(frozen=True, slots=True)
class Change:
    """Something a person did: the records it changed as they were `before` and `after`, and the
    numbers of the events it entered in the wool book. `words` are what was said of it."""

    key: str
    words: str
    before: tuple[Record, ...]
    after: tuple[Record, ...]
    events: tuple[int, ...]

    def about(self, plan_id: str) -> bool:
        """True where it changed a plan, its parts or what is promised to it."""
        records = (*self.before, *self.after)
        own = [one for one in records if isinstance(one, Plan | OfPlan)]
        return any((one.id if isinstance(one, Plan) else one.plan_id) == plan_id for one in own)

    def of_errands(self) -> bool:
        """True where it changed a line of the work list."""
        return any(isinstance(one, Errand) for one in (*self.before, *self.after))


_kept: dict[str, tuple[Change, ...]] = {}


def remember(session: Session, was: Book, words: str) -> str:
    """Keep what has changed since the book was `was`; answers the key to undo it by."""
    book = load_book(session)
    old, new = _records(was), _records(book)
    known = {one.seq for one in was.events}
    change = Change(
        key=new_id(),
        words=words,
        before=tuple(one for key, one in old.items() if new.get(key) != one),
        after=tuple(one for key, one in new.items() if old.get(key) != one),
        events=tuple(one.seq for one in book.events if one.seq not in known),
    )
    return _keep(session, change)


def remember_written(session: Session, was: Written, now: Written, words: str) -> str:
    """Keep that what is written of a fleece or a holding was changed; answers the key to undo it
    by."""
    return _keep(session, Change(new_id(), words, (was,), (now,), ()))


def _keep(session: Session, change: Change) -> str:
    _kept[_place(session)] = (*_changes(session), change)[-MOST:]
    return change.key


def last_change(session: Session, book: Book, about: Callable[[Change], bool]) -> Change | None:
    """The last change that was `about` something, if it can still be undone."""
    change = next((one for one in reversed(_changes(session)) if about(one)), None)
    return change if change and _still(change, book) else None


def undo_change(session: Session, key: str, day: date) -> Change:
    """Put everything back as it was before a change; events are undone on `day`.

    CannotUndo where it was changed again since, or its yarn is promised elsewhere by now.
    """
    change = next((one for one in _changes(session) if one.key == key), None)
    if change is None:
        raise CannotUndo("This cannot be undone any more: it was too long ago.")
    if not _still(change, load_book(session)):
        raise CannotUndo("This was changed again since, so it cannot be undone as it was.")
    lacked = _lacking(session)
    for seq in reversed(change.events):
        _take_back(session, seq, day)
    _put_back(session, change)
    if any(m > lacked.get(one, 0.0) for one, m in _lacking(session).items()):
        raise CannotUndo("The yarn that was promised here is promised elsewhere by now.")
    return change


def _take_back(session: Session, seq: int, day: date) -> None:
    """Undo an event of a change; one that was itself an undo is entered again as it was."""
    events = {one.seq: one for one in load_book(session).events}
    undone = events.get(events[seq].undoes or 0)
    if undone is None:
        undo_event(session, seq, day)
    else:
        post(session, undone.kind, day, undone.lines, undone.note)


def _put_back(session: Session, change: Change) -> None:
    old = {_key(one) for one in change.before}
    for one in sorted(change.before, key=_place_in_order):
        put(session, one)
    for one in sorted(change.after, key=_place_in_order, reverse=True):
        if _key(one) not in old and not isinstance(one, Written):
            remove(session, one)


def _lacking(session: Session) -> dict[str, float]:
    """Metres the shelf does not hold of each promise."""
    return {one.promise_id: one.m for one in current(session).reckoning.uncovered}


def _still(change: Change, book: Book) -> bool:
    """True while everything the change made or took away is as it left it."""
    now = _records(book) | _written(book, change)
    gone = {_key(one) for one in change.before} - {_key(one) for one in change.after}
    return all(now.get(_key(one)) == one for one in change.after) and gone.isdisjoint(now)


def _records(book: Book) -> dict[Key, Record]:
    tables = (
        *(book.plans, book.parts, book.promises, book.errands, book.photos),
        *(book.progress, book.weighings, book.stints, book.marks),
    )
    return {_key(one): one for table in tables for one in table}


def _written(book: Book, change: Change) -> dict[Key, Record]:
    """The fleeces and holdings that a change was of, as they are written now."""
    named = {one.id for one in change.after if isinstance(one, Written)}
    tables = (book.fleeces, book.holdings) if named else ()
    return {_key(one): one for table in tables for one in table if one.id in named}


def _key(record: Record) -> Key:
    return type(record), record.id


def _place_in_order(record: Record) -> int:
    return ORDER.index(type(record))


def _changes(session: Session) -> tuple[Change, ...]:
    return _kept.get(_place(session), ())


def _place(session: Session) -> str:
    return str(session.connection().engine.url)
