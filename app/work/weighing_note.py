"""An event notes which readings it came of, so that undoing it takes them back as well."""

from collections.abc import Iterable

from app.book.event import Event
from app.book.reading import Reading

READINGS = "by readings "
BETWEEN = "; "


def noted(note: str, readings: Iterable[Reading]) -> str:
    """The note of an event that came of these readings."""
    ids = " ".join(one.id for one in readings)
    return BETWEEN.join(filter(None, (note, READINGS + ids if ids else "")))


def readings_noted(event: Event) -> tuple[str, ...]:
    """The ids of the readings an event came of."""
    ids = event.note.rpartition(READINGS)[2] if READINGS in event.note else ""
    return tuple(ids.split())


def words_noted(event: Event) -> str:
    """What the note of an event says besides."""
    return event.note.partition(READINGS)[0].removesuffix(BETWEEN)
