"""What would be if some records were changed: a book beside the book, nothing saved."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date
from typing import TypeVar

from app.book.book import Book
from app.book.errand import Errand
from app.book.event import Event
from app.book.holding import Holding
from app.book.plan import Part, Plan, Promise
from app.book.reading import Reading
from app.book.woolbook import Portion, arrive

Changed = Plan | Part | Promise | Errand
Kind = TypeVar("Kind", bound=Changed)


@dataclass(frozen=True, slots=True)
class ToCome:
    """A skein that is still to be spun or bought, as it will be: reeled, finished, `mm` of yarn."""

    id: str
    yarn_id: str
    mm: int
    mg: int


@dataclass(frozen=True, slots=True)
class WhatIf:
    """Records `put`, new or in the place of their older selves, and records `gone`; `to_come` are
    skeins that are there only once somebody has made them."""

    put: tuple[Changed, ...] = ()
    gone: tuple[Changed, ...] = ()
    to_come: tuple[ToCome, ...] = ()

    @property
    def nothing(self) -> bool:
        """True where no record would be changed."""
        return not self.put and not self.gone

    def in_book(self, book: Book) -> Book:
        """The book as it would be."""
        changed = replace(
            book,
            plans=_with(book.plans, self.put, self.gone, Plan),
            parts=_with(book.parts, self.put, self.gone, Part),
            promises=_with(book.promises, self.put, self.gone, Promise),
            errands=_with(book.errands, self.put, self.gone, Errand),
        )
        for one in self.to_come:
            changed = _arrived(changed, one)
        return changed


def between(book: Book, changed: Book) -> WhatIf:
    """What makes one book of another, in plans, parts, promises and lines of the work list."""
    put: list[Changed] = []
    gone: list[Changed] = []
    for old, new in zip(_tables(book), _tables(changed), strict=True):
        were, are = {one.id: one for one in old}, {one.id: one for one in new}
        put += [one for one in new if were.get(one.id) != one]
        gone += [one for one in old if one.id not in are]
    return WhatIf(tuple(put), tuple(gone))


def _tables(book: Book) -> tuple[tuple[Changed, ...], ...]:
    return (book.plans, book.parts, book.promises, book.errands)


def _with(
    table: Iterable[Kind], put: tuple[Changed, ...], gone: tuple[Changed, ...], kind: type[Kind]
) -> tuple[Kind, ...]:
    new = {one.id: one for one in put if isinstance(one, kind)}
    out = {one.id for one in gone if isinstance(one, kind)} | new.keys()
    return (*(one for one in table if one.id not in out), *new.values())


def _arrived(book: Book, one: ToCome) -> Book:
    """The book with a skein reeled on the maker's own reel and finished."""
    girth = book.settings.girth_mm
    skein = Holding(one.id, "skein", one.id, yarn_id=one.yarn_id)
    entry = arrive([Portion(skein, one.mg, one.mm)])
    seq = max((event.seq for event in book.events), default=0) + 1
    day = max((event.day for event in book.events), default=date.min)
    reading = Reading(
        id=f"{one.id} reeled",
        holding_id=one.id,
        kind="length",
        value=one.mm,
        typed="",
        unit="mm",
        instrument="reel",
        day=day,
        finished=True,
        girth_mm=girth,
        turns=one.mm / girth,
    )
    return replace(
        book,
        holdings=(*book.holdings, skein),
        readings=(*book.readings, reading),
        events=(*book.events, Event(seq, entry.kind, day, entry.lines)),
    )
