"""Something in the book that cannot be right, said so that its maker can find and mend it."""

from dataclasses import dataclass
from typing import Any

from app.book.book import Book
from app.book.event import Event
from app.book.holding import Holding
from app.book.knitting import Progress, Weighing
from app.book.photo import Photo
from app.book.plan import Part, Promise
from app.book.reading import Reading
from app.book.stint import Stint


@dataclass(frozen=True, slots=True)
class Finding:
    """`record` names the record, `field` its field, `text` what is wrong with it."""

    record: str
    field: str
    text: str

    def __str__(self) -> str:
        return f"{self.record}, {self.field}: {self.text}"


def name_of(book: Book, record: Any) -> str:
    """A record by the words its maker knows it by."""
    match record:
        case Holding():
            return f"{record.kind} {record.code}"
        case Event():
            return f"event {record.seq} ({record.kind}, {record.day})"
        case Reading():
            return f"{record.kind} reading of {_code(book, record.holding_id)} on {record.day}"
        case Part():
            return f"part {record.name} of {_plan(book, record.plan_id)}"
        case Promise():
            return f"promise of {_code(book, record.holding_id)} to {_plan(book, record.plan_id)}"
    return _beside(book, record)


def _beside(book: Book, record: Any) -> str:
    match record:
        case Stint():
            return f"{record.minutes} minutes of {record.work} on {record.day}"
        case Progress():
            return f"{record.rows} rows of {_plan(book, record.plan_id)}"
        case Weighing():
            return f"weighing of {_code(book, record.holding_id)} on {record.day}"
        case Photo():
            return f"photo {record.caption or record.sha256[:12]}"
    label = record.text if hasattr(record, "text") else record.name
    return f"{type(record).__name__.lower()} {label}"


def _code(book: Book, holding_id: str) -> str:
    holding = book.holding.get(holding_id)
    return holding.code if holding else holding_id


def _plan(book: Book, plan_id: str) -> str:
    plan = book.plan.get(plan_id)
    return plan.name if plan else plan_id
