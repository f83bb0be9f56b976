"""What was knit into a garment so far, skein by skein."""

from dataclasses import dataclass
from datetime import date

from app.book.book import Book
from app.book.event import Event


@dataclass(frozen=True, slots=True)
class KnitIn:
    """A skein, or some of it, that went into a garment; `seq` is the event that says so."""

    seq: int
    day: date
    holding_id: str
    code: str
    g: float
    m: float


def knit_into(book: Book, plan_id: str) -> tuple[KnitIn, ...]:
    """The skeins knit into a plan's garment, in the order they were used; without what was undone.

    Metres are those of the wool book, grams those that left the skein.
    """
    garments = {one.id for one in book.holdings if one.plan_id == plan_id and one.kind == "garment"}
    undone = {one.undoes for one in book.events}
    used = [one for one in book.events if one.kind == "use" and one.seq not in undone]
    mine = [one for one in used if any(line.holding_id in garments for line in one.lines)]
    return tuple(row for event in mine for row in _rows(event, book))


def _rows(event: Event, book: Book) -> list[KnitIn]:
    return [
        KnitIn(
            seq=event.seq,
            day=event.day,
            holding_id=line.holding_id,
            code=book.holding[line.holding_id].code,
            g=-line.mg / 1000,
            m=-line.mm / 1000,
        )
        for line in event.lines
        if line.mg < 0
    ]
