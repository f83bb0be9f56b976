"""What the shelf covers: the garments alone and in two orders, nothing touched; keep one order."""

from collections import deque
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from sqlmodel import Session

from app.book.book import Book
from app.book.plan import Part, Plan, Promise
from app.book.stamp import stamp
from app.planning import reckon
from app.planning.shelf_covers import Covered, all_covered, alone, in_order, intended
from app.planning.shelf_covers_best import Best, Value, best_set
from app.planning.shelf_covers_person import Standard, standards
from app.planning.what_if import between
from app.work.beside import ask_beside, forget_beside, stop_beside
from app.work.reckoning import Known, current
from app.work.ways_out import save_what_if

AT_ONCE = 800
"""Up to so many skeins and parts, times garments, the page is worked out while she waits."""


@dataclass(frozen=True, slots=True)
class Order:
    """Plans in an order, as they would stand in it; `anew` takes kept promises apart as well."""

    ids: tuple[str, ...]
    anew: bool
    covered: dict[str, Covered]


@dataclass(frozen=True, slots=True)
class Covers:
    """Everything the page shows: each plan alone, in the order there is and in `other`, the best
    set, and garments for a person; `stamp` goes with keeping an order."""

    alone: tuple[Covered, ...]
    now: Order
    other: Order | None
    best: Best
    standards: tuple[Standard, ...]
    stamp: str


class OrderGone(Exception):
    """Met when an order is to be kept and the plans or promises are not what they were."""


@dataclass(frozen=True, slots=True)
class AskedOfShelf:
    """What is valued, for whom, and another order to look at (none for none); `anew` takes kept
    promises apart in it as well."""

    value: Value
    person_id: str = ""
    order: tuple[str, ...] = ()
    anew: bool = False


@dataclass(frozen=True, slots=True)
class SoFar:
    """Steps done of so many; `covers` once all are."""

    done: int
    of: int
    covers: Covers | None = None


def what_covers(known: Known, asked: AskedOfShelf) -> Covers:
    """The whole page at once."""
    (last,) = deque(_steps(known.book, asked), maxlen=1)
    assert last.covers is not None
    return last.covers


def covers_so_far(session: Session, asked: AskedOfShelf) -> tuple[SoFar, bool]:
    """How far the question is answered, and whether that goes on: at once for a small shelf and
    few garments, else beside the program."""
    known = current(session)
    book = known.book
    if (len(book.holdings) + len(book.parts)) * len(intended(book)) <= AT_ONCE:
        return SoFar(1, 1, what_covers(known, asked)), False
    heard = ask_beside(session, _question(asked), search_covers, book, asked)
    return heard.told or SoFar(0, 1), heard.going_on


def search_covers(tell: Callable[[SoFar], None], book: Book, asked: AskedOfShelf) -> None:
    """The same, step by step."""
    for one in _steps(book, asked):
        tell(one)


def stop_covers(session: Session, asked: AskedOfShelf) -> None:
    """Leave a question unanswered."""
    stop_beside(session, _question(asked))


def ask_again(session: Session, asked: AskedOfShelf) -> None:
    """Let a question that was stopped be answered after all."""
    forget_beside(session, _question(asked))


def _question(asked: AskedOfShelf) -> tuple[object, ...]:
    return "shelf", asked


def _steps(book: Book, asked: AskedOfShelf) -> Iterator[SoFar]:
    """Each garment alone, the orders, the best set, garments for a person."""
    ids = tuple(one.id for one in intended(book))
    of, by_itself = len(ids) + 2, []
    for done, one in enumerate(ids, 1):
        by_itself.append(alone(book, one))
        yield SoFar(done, of)
    other = tuple(one for one in asked.order if one in ids)
    looked = other and (asked.anew or other != ids)
    now = _in_order(book, ids, False)
    then = _in_order(book, other, asked.anew) if looked else None
    yield SoFar(of - 1, of)
    person = book.person.get(asked.person_id)
    garments = standards(book, reckon(book), person) if person else ()
    best = best_set(book, asked.value)
    yield SoFar(of, of, Covers(tuple(by_itself), now, then, best, garments, order_stamp(book)))


def keep_order(session: Session, order: Sequence[str], anew: bool, typed_stamp: str) -> int:
    """Serve the plans in an order from now on, and promise what is free accordingly. Answers how
    many promises that moved; OrderGone where the plans are not what they were."""
    book = current(session).book
    if order_stamp(book) != typed_stamp:
        raise OrderGone
    change = between(book, in_order(book, order, anew))
    save_what_if(session, change)
    return sum(1 for one in (*change.put, *change.gone) if isinstance(one, Promise))


@dataclass(frozen=True, slots=True)
class _Plans:
    plans: tuple[Plan, ...]
    parts: tuple[Part, ...]
    promises: tuple[Promise, ...]


def order_stamp(book: Book) -> str:
    """A digest that changes with any plan, part or promise."""
    return stamp(
        _Plans(
            tuple(sorted(book.plans, key=lambda one: one.id)),
            tuple(sorted(book.parts, key=lambda one: one.id)),
            tuple(sorted(book.promises, key=lambda one: one.id)),
        )
    )


def _in_order(book: Book, ids: tuple[str, ...], anew: bool) -> Order:
    stands = all_covered(in_order(book, ids, anew), ids)
    return Order(ids, anew, {one.plan_id: one for one in stands})
