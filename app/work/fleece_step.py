"""The steps a fleece goes through."""

from app.book.words import ReadingState, Step, WoolState

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


STEP_TO: dict[WoolState, Step] = {
    "skirted": "skirt",
    "drying": "scour",
    "scoured": "scour",
    "carded": "card",
    "combed": "comb",
}
"""The work that leads to each state."""


def step_between(before: WoolState, after: WoolState) -> Step:
    """The work by which wool went from one state on to another; empty for none."""
    if before == "drying" and after == "scoured":
        return "dry"
    return STEP_TO.get(after, "") if STAGE[after] > STAGE[before] else ""


def is_step(before: WoolState, after: WoolState) -> bool:
    """Whether going from one state to the other is work that takes something away for good.

    Drying only loses water, a part spun fleece is weighed with its bobbins, and a state further
    back puts a slip right: none of these makes waste.
    """
    return STAGE[after] > STAGE[before] and before != "drying" and after != "part spun"


def is_back(before: WoolState, after: WoolState) -> bool:
    """Whether a state lies nearer to the sheep than the one before."""
    return STAGE[after] < STAGE[before]


def reading_state(state: WoolState) -> ReadingState:
    """In what state wool is when a fleece in that state is weighed."""
    if state in ("raw", "skirted"):
        return "in the grease"
    return "damp" if state == "drying" else "dry"
