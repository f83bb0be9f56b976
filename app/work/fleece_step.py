"""The steps a fleece goes through, and the note by which an undo finds the way back."""

from typing import get_args

from app.book.event import Event
from app.book.words import ReadingState, WoolState
from app.work.weighing_note import words_noted

WOOL_STATES: tuple[WoolState, ...] = get_args(WoolState)

STAGE: dict[WoolState, int] = {
    "raw": 0,
    "skirted": 1,
    "drying": 2,
    "scoured": 3,
    "carded": 4,
    "combed": 4,
    "part spun": 5,
}
"""How far along the way from the sheep to yarn each state is."""


def is_step(before: WoolState, after: WoolState) -> bool:
    """Whether going from one state to the other is work that takes something away for good.

    Drying only loses water, a part spun fleece is weighed with its bobbins, and a state further
    back puts a slip right: none of these makes waste.
    """
    return STAGE[after] > STAGE[before] and before != "drying" and after != "part spun"


def reading_state(state: WoolState) -> ReadingState:
    """In what state wool is when a fleece in that state is weighed."""
    if state in ("raw", "skirted"):
        return "in the grease"
    return "damp" if state == "drying" else "dry"


def step_note(before: WoolState, after: WoolState) -> str:
    """What an event notes of a change of state."""
    return f"{before} to {after}"


def states_of(event: Event) -> tuple[WoolState, WoolState] | None:
    """The states an event led from and to; None for one that changed none."""
    known = {step_note(one, two): (one, two) for one in WOOL_STATES for two in WOOL_STATES}
    return known.get(words_noted(event))
