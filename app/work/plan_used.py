"""What was knit into a garment so far, skein by skein."""

from dataclasses import dataclass
from datetime import date

from app.book.book import Book
from app.book.event import Event
from app.book.words import YARN_KINDS


@dataclass(frozen=True, slots=True)
class KnitIn:
    """A skein, or some of it, that went into a garment; `seq` is the event that says so."""

    seq: int
    day: date
    holding_id: str
    code: str
    g: float
    m: float
    is_yarn: bool


def knit_into(book: Book, plan_id: str) -> tuple[KnitIn, ...]:
    """The skeins knit into a plan's garment, in the order they were used; without what was undone.

    Metres and grams are those of the wool book; what came back as a left-over, or went to waste on
    the way, is a row of its own that takes away, so that the rows add up to the garment.
    """
    garments = {one.id for one in book.holdings if one.plan_id == plan_id and one.kind == "garment"}
    undone = {one.undoes for one in book.events}
    used = [one for one in book.events if one.kind == "use" and one.seq not in undone]
    mine = [one for one in used if any(line.holding_id in garments for line in one.lines)]
    return tuple(row for event in mine for row in _rows(event, book, garments))


def _rows(event: Event, book: Book, garments: set[str]) -> list[KnitIn]:
    return [
        KnitIn(
            seq=event.seq,
            day=event.day,
            holding_id=line.holding_id,
            code=book.holding[line.holding_id].code,
            g=-line.mg / 1000,
            m=-line.mm / 1000,
            is_yarn=book.holding[line.holding_id].kind in YARN_KINDS,
        )
        for line in event.lines
        if line.holding_id not in garments
    ]
