"""What a weighing of a fleece did, said in a sentence."""

from app.book.words import WoolState
from app.web.shown import Shown
from app.work.fleece_find import KnownFleece, Wool
from app.work.fleece_step import is_step
from app.work.fleece_weigh import Weighed, Weighing

WAITS = " It was damp, so the book waits for it to dry."


def weighed_told(
    found: KnownFleece, wool: Wool, weighing: Weighing, weighed: Weighed, shown: Shown
) -> str:
    """The sentence after a weighing: what the step took, or how far the book was off."""
    name, state = found.fleece.name, weighing.state
    if weighed.event is None:
        said = WAITS if state == "drying" else " It agrees with the book."
        return f"The weighing of {name} is kept.{said}"
    if weighing.taken_mg is not None:
        rest = shown.mass(wool.g - weighing.taken_mg / 1000)
        name = f"A part of {name}"
        return (
            f"{name} is now {state}{_change(wool, state, weighed, shown)} {rest} stay as they were."
        )
    changed = f"{name} is weighed" if wool.holding.state == state else f"{name} is now {state}"
    return changed + _change(wool, state, weighed, shown)


def _change(wool: Wool, state: WoolState, weighed: Weighed, shown: Shown) -> str:
    if state == "drying":
        return f".{WAITS}"
    amount = shown.mass(abs(weighed.gained_mg) / 1000)
    if is_step(wool.weighed_as, state) and weighed.gained_mg <= 0:
        return f": {amount} went on the way."
    return f": {amount} {'more' if weighed.gained_mg > 0 else 'less'} than the book had."
