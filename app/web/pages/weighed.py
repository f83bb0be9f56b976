"""What a weighing of a fleece did, said in a sentence."""

from app.book.words import WoolState
from app.web.shown import Shown
from app.work.fleece_find import KnownFleece
from app.work.fleece_step import is_step
from app.work.fleece_weigh import Weighed


def weighed_told(found: KnownFleece, state: WoolState, weighed: Weighed, shown: Shown) -> str:
    """The sentence after a weighing: what the step took, or how far the book was off."""
    name, before = found.fleece.name, found.holding.state or state
    if weighed.event is None:
        damp = " It was damp, so the book waits for it to dry." if state == "drying" else ""
        return f"The weighing of {name} is kept.{damp or ' It agrees with the book.'}"
    amount = shown.mass(abs(weighed.gained_mg) / 1000)
    if is_step(before, state) and weighed.gained_mg <= 0:
        return f"{name} is now {state}: {amount} went on the way."
    change = f"{amount} {'more' if weighed.gained_mg > 0 else 'less'} than the book had"
    changed = f"{name} is now {state}" if before != state else f"{name} is weighed"
    return f"{changed}: {change}."
