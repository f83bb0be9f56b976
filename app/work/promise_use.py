"""Knit a promised skein into its garment: the yarn moves in the wool book."""

from dataclasses import replace
from datetime import date

from sqlmodel import Session

from app.book.book import Book
from app.book.errors import MakesTooMuch
from app.book.event import Balance, Event
from app.book.holding import Holding
from app.book.ids import new_id
from app.book.plan import Plan, Promise
from app.book.woolbook import Portion, mm_of, use
from app.planning.supply import stock
from app.planning.yarns import Lots
from app.store.records import load_book, post, put, remove

NEARLY_ALL = 0.999
"""Beyond this share the whole skein is used: what would be left is dust of rounding."""


def use_promised(session: Session, promise: Promise, mm: int, day: date) -> Event:
    """Knit `mm` of a promised skein, at most what it holds; what remains stays promised.

    Metres are finished metres; grams follow as if the skein were even along its length.
    """
    book = load_book(session)
    held = book.balances.get(promise.holding_id, Balance())
    held_m = stock(Lots(book))[promise.holding_id].held.value
    share = mm / 1000 / held_m if held_m > 0 else 1.0
    share = 1.0 if share > NEARLY_ALL else share
    skein = book.holding[promise.holding_id]
    used = Portion(skein, round(held.mg * share), round(held.mm * share))
    return _knit(session, book, promise, used, promise.mm - mm, day)


def use_down_to(session: Session, promise: Promise, left_mg: int, day: date) -> Event:
    """Knit a promised skein until what is left of it weighs `left_mg`, which becomes free.

    MakesTooMuch where the skein weighs less than what is left.
    """
    book = load_book(session)
    held = book.balances.get(promise.holding_id, Balance())
    if left_mg > held.mg:
        raise MakesTooMuch("More is left than the skein held. Weigh it once more.")
    mg = held.mg - left_mg
    used = Portion(book.holding[promise.holding_id], mg, mm_of(held, mg))
    return _knit(session, book, promise, used, 0, day)


def _knit(
    session: Session, book: Book, promise: Promise, used: Portion, still_mm: int, day: date
) -> Event:
    garment = garment_of(session, book, book.plan[promise.plan_id])
    entry = use(book.balances, (used,), garment)
    event = post(session, entry.kind, day, entry.lines)
    if still_mm > 0:
        put(session, replace(promise, mm=still_mm))
    else:
        remove(session, promise)
    return event


def garment_of(session: Session, book: Book, plan: Plan) -> Holding:
    """The holding that holds a plan's garment; made at its first skein."""
    for one in book.holdings:
        if one.kind == "garment" and one.plan_id == plan.id:
            return one
    code = free_code({one.code for one in book.holdings}, plan.name)
    holding = Holding(id=new_id(), kind="garment", code=code, plan_id=plan.id)
    put(session, holding)
    return holding


def free_code(taken: set[str], name: str) -> str:
    """A code that no holding has yet: the name, or the name with a number."""
    codes = (name if number == 1 else f"{name} {number}" for number in range(1, len(taken) + 2))
    return next(code for code in codes if code not in taken)
