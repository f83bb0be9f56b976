"""What the note of an event tells besides words: the states of the wool it led from and to, the
reason for it, and the readings it came of. By these an undo finds the way back."""

from collections.abc import Iterable

from app.book.event import Event
from app.book.reading import Reading
from app.book.words import WOOL_STATES, WoolState

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


def reason_noted(event: Event) -> str:
    """Why it was entered, in the maker's words; empty where nobody said."""
    states, _, rest = words_noted(event).partition(BETWEEN)
    return rest if states in STEPS else words_noted(event)


def with_reason(note: str, reason: str) -> str:
    """A note, and why."""
    return BETWEEN.join(filter(None, (note, reason)))


def step_note(before: WoolState, after: WoolState) -> str:
    """What an event notes of a change of state."""
    return f"{before} to {after}"


STEPS = {step_note(one, two): (one, two) for one in WOOL_STATES for two in WOOL_STATES}


def states_of(event: Event) -> tuple[WoolState, WoolState] | None:
    """The states an event led from and to; None for one that changed none."""
    return STEPS.get(words_noted(event).partition(BETWEEN)[0])
