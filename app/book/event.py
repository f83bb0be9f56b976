"""The wool book: an append-only list of events whose grams always sum to zero."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from app.book.words import EventKind, Step


@dataclass(frozen=True, slots=True)
class Line:
    """What one holding gained (positive) or gave (negative): mg of wool and mm of yarn."""

    holding_id: str
    mg: int
    mm: int = 0


@dataclass(frozen=True, slots=True)
class Event:
    """Something that happened to wool. `seq` is the order in which the book learned of it.

    `step` is what was done to it, `passes` how often it went through the carder or the combs.
    """

    seq: int
    kind: EventKind
    day: date
    lines: tuple[Line, ...] = ()
    note: str = ""
    undoes: int | None = None
    step: Step = ""
    passes: int = 0


@dataclass(frozen=True, slots=True)
class Balance:
    """What a holding holds now: mg of wool and mm of yarn."""

    mg: int = 0
    mm: int = 0


def balances(events: Iterable[Event]) -> dict[str, Balance]:
    """The balance of every holding named in `events`, in mg and mm."""
    totals: dict[str, list[int]] = {}
    for event in events:
        for line in event.lines:
            total = totals.setdefault(line.holding_id, [0, 0])
            total[0] += line.mg
            total[1] += line.mm
    return {holding: Balance(mg, mm) for holding, (mg, mm) in totals.items()}
