"""Promises against what the shelf really holds: each metre once, by priority.

A measurement is never refused, so a skein may hold less than was promised from it; then the plan
that comes last goes short, and is named.
"""

from dataclasses import dataclass

from app.book.book import Book
from app.book.plan import Plan, Promise
from app.planning.answers import Uncovered
from app.planning.supply import Stock
from app.planning.turn import draws

TOLERANCE_M = 0.001
"""A millimetre: below it a promise is not called uncovered."""


@dataclass(slots=True)
class Shelf:
    """The shelf while it is shared out: metres of each promise that are covered, metres of each
    holding not promised to any plan, and what could not be covered."""

    stock: dict[str, Stock]
    covered: dict[str, float]
    free: dict[str, float]
    uncovered: list[Uncovered]


def promises_to(book: Book, plan: Plan) -> list[Promise]:
    """The promises that count for a plan: none once it is done."""
    return book.promises_of.get(plan.id, []) if draws(plan) else []


def cover(book: Book, plans: list[Plan], stock: dict[str, Stock]) -> Shelf:
    """Share the shelf out among the promises of `plans`, in their order."""
    shelf = Shelf(stock, {}, {key: max(0.0, one.held.value) for key, one in stock.items()}, [])
    for plan in plans:
        for promise in promises_to(book, plan):
            _cover_one(book, plan, promise, shelf)
    return shelf


def _cover_one(book: Book, plan: Plan, promise: Promise, shelf: Shelf) -> None:
    wanted = promise.mm / 1000
    there = shelf.free.get(promise.holding_id, 0.0)
    metres = min(wanted, there)
    shelf.covered[promise.id] = metres
    if promise.holding_id in shelf.free:
        shelf.free[promise.holding_id] = there - metres
    if wanted - metres > TOLERANCE_M:
        holding, part = book.holding[promise.holding_id], book.part[promise.part_id]
        short = wanted - metres
        shelf.uncovered.append(
            Uncovered(promise.id, plan.id, plan.name, part.name, holding.code, short)
        )
