"""The wool book in the database: events are only ever added."""

from collections.abc import Sequence
from datetime import date

from sqlalchemy import insert, select
from sqlmodel import Session

from app.book.event import Event, Line
from app.book.words import EventKind, Step
from app.store.balance import add_lines
from app.store.errors import Refused, plain_words
from app.store.tables.event import EventRow, LineRow
from app.store.version import mark_changed

_events = EventRow.__table__  # type: ignore[attr-defined]
_lines = LineRow.__table__  # type: ignore[attr-defined]
KEPT = tuple(column.name for column in _events.c)


@plain_words()
def post(
    session: Session,
    kind: EventKind,
    day: date,
    lines: Sequence[Line],
    note: str = "",
    undoes: int | None = None,
    step: Step = "",
    passes: int = 0,
) -> Event:
    """Write an event and its lines, and what the holdings now hold; answers it with its seq.

    Refused where its grams do not sum to zero.
    """
    if sum(line.mg for line in lines):
        raise Refused("The grams of this event do not balance.")
    values = {"kind": kind, "day": day, "note": note, "undoes": undoes}
    values |= {"step": step, "passes": passes}
    seq = session.connection().execute(insert(_events).values(values)).lastrowid
    event = Event(seq, kind, day, tuple(lines), note, undoes, step, passes)
    _write_lines(session, [event])
    add_lines(session, event.lines)
    mark_changed(session)
    return event


def load_events(session: Session) -> tuple[Event, ...]:
    """Every event with its lines, in the order in which the book learned of them."""
    lines: dict[int, list[Line]] = {}
    columns = (_lines.c.event_seq, _lines.c.holding_id, _lines.c.mg, _lines.c.mm)
    order = (_lines.c.event_seq, _lines.c.position)
    for seq, holding_id, mg, mm in session.connection().execute(select(*columns).order_by(*order)):
        lines.setdefault(seq, []).append(Line(holding_id, mg, mm))
    rows = session.connection().execute(select(_events).order_by(_events.c.seq))
    return tuple(
        Event(seq, kind, day, tuple(lines.get(seq, ())), *rest) for seq, kind, day, *rest in rows
    )


def write_events(session: Session, events: Sequence[Event]) -> None:
    """Write events as they are, with the seq they have; the balances are left to the caller."""
    rows = [{name: getattr(one, name) for name in KEPT} for one in events]
    if rows:
        session.connection().execute(insert(_events), rows)
    _write_lines(session, events)


def _write_lines(session: Session, events: Sequence[Event]) -> None:
    rows = [
        {
            "event_seq": event.seq,
            "position": position,
            "holding_id": line.holding_id,
            "mg": line.mg,
            "mm": line.mm,
        }
        for event in events
        for position, line in enumerate(event.lines)
    ]
    if rows:
        session.connection().execute(insert(_lines), rows)
