"""What the shelf covers: the garments alone and in two orders, nothing touched; keep one order."""

from collections.abc import Sequence
from dataclasses import dataclass

from sqlmodel import Session

from app.book.book import Book
from app.book.plan import Part, Plan, Promise
from app.book.stamp import stamp
from app.planning.shelf_covers import Covered, all_covered, alone, in_order, intended
from app.planning.shelf_covers_best import Best, Value, best_set
from app.planning.shelf_covers_person import Standard, standards
from app.planning.what_if import between
from app.work.reckoning import Known, current
from app.work.ways_out import save_what_if


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


def what_covers(
    known: Known,
    value: Value,
    person_id: str | None = None,
    order: Sequence[str] = (),
    anew: bool = False,
) -> Covers:
    """The whole page; `order` are plans in another order to look at, none for none."""
    book = known.book
    ids = tuple(one.id for one in intended(book))
    person = book.person.get(person_id or "")
    other = tuple(one for one in order if one in ids)
    return Covers(
        alone=tuple(alone(book, one) for one in ids),
        now=_in_order(book, ids, False),
        other=_in_order(book, other, anew) if other and (anew or other != ids) else None,
        best=best_set(book, value),
        standards=standards(book, known.reckoning, person) if person else (),
        stamp=order_stamp(book),
    )


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
