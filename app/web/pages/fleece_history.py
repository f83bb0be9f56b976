"""What happened to a fleece, in words."""

from dataclasses import dataclass

from app.book.event import Event
from app.book.event_note import reason_noted, states_of
from app.book.words import Step
from app.web.shown import MINUS, Shown
from app.work.fleece_find import KnownFleece

EVENT_WORDS = {
    "arrive": "came in",
    "prepare": "prepared",
    "spin": "spun",
    "correct": "put right",
    "put away": "put away",
    "undo": "undone",
}
STEP_WORDS: dict[Step, str] = {
    "skirt": "skirted",
    "scour": "scoured",
    "dry": "dried",
    "pick": "picked",
    "card": "carded",
    "comb": "combed",
    "blend": "blended",
    "dye": "dyed",
    "ply": "plied",
    "finish": "finished",
}


@dataclass(frozen=True, slots=True)
class Happening:
    """A line of the fleece's history, in words. `undo` is the event a button can take back."""

    day: str
    what: str
    change: str
    undo: int | None = None
    undone: bool = False


def history(known: KnownFleece, shown: Shown) -> tuple[Happening, ...]:
    """The latest first; only the last that still stands can be taken back here."""
    open_events = [
        one for one in known.events if one.seq not in known.undone and one.kind != "undo"
    ]
    last = open_events[-1].seq if open_events else None
    return tuple(_happening(known, one, last, shown) for one in reversed(known.events))


def _happening(known: KnownFleece, event: Event, last: int | None, shown: Shown) -> Happening:
    moved = [line.mg for line in event.lines if line.holding_id in known.holdings]
    gained = sum(moved)
    sign = "+" if gained > 0 else MINUS if gained < 0 else ""
    return Happening(
        day=shown.day(event.day),
        what=_words(event, _part_taken(moved, shown)),
        change=f"{sign}{shown.mass(abs(gained) / 1000)}",
        undo=event.seq if event.seq == last else None,
        undone=event.seq in known.undone,
    )


def _part_taken(moved: list[int], shown: Shown) -> str:
    """What was taken from the rest, where a part was kept apart."""
    taken = -sum(mg for mg in moved if mg < 0)
    return f"{shown.mass(taken / 1000)} of it " if len(moved) > 1 and taken else ""


def _words(event: Event, part: str) -> str:
    states, reason = states_of(event), reason_noted(event)
    words = STEP_WORDS.get(event.step) or EVENT_WORDS.get(event.kind, event.kind)
    if states:
        words = f"{part}from {states[0]} to {states[1]}"
    elif part:
        words = f"{words}, {part.strip()}"
    passes = f", {passes_said(event.passes)}" if event.passes else ""
    return f"{words}{passes}" + (f": {reason}" if reason else "")


def passes_said(passes: int) -> str:
    """ "3 passes" """
    return f"{passes} pass{'es' if passes > 1 else ''}"
