"""What a weighing of a fleece did, said in a sentence."""

from app.book.book import Book
from app.book.words import Step
from app.planning.drying import Drying
from app.planning.learning import learn
from app.web.shown import Shown
from app.work.fleece_doubt import Doubt, usual_loss
from app.work.fleece_find import KnownFleece, Wool
from app.work.fleece_step import is_step
from app.work.fleece_weigh import Weighed, Weighing

DONE: dict[Step, str] = {
    "pick": "is picked",
    "card": "is carded once more",
    "comb": "is combed once more",
    "dye": "is dyed",
}
WAITS = " It was damp, so the book waits for it to dry."


def weighed_told(
    found: KnownFleece, wool: Wool, weighing: Weighing, weighed: Weighed, book: Book
) -> str:
    """The sentence after a weighing: what the step took and what was to be expected of it by the
    book before it, or how far the book was off."""
    name, state, shown = found.fleece.name, weighing.state, Shown(book.settings)
    if weighed.event is None:
        said = WAITS if state == "drying" else " It agrees with the book."
        return f"The weighing of {name} is kept.{said}"
    if weighing.taken_mg is not None:
        rest = shown.mass(wool.g - weighing.taken_mg / 1000)
        change = _change(found, wool, weighing, weighed, book)
        return f"A part of {name} {_done(wool, weighing)}{change} {rest} stay as they were."
    return f"{name} {_done(wool, weighing)}{_change(found, wool, weighing, weighed, book)}"


def _done(wool: Wool, weighing: Weighing) -> str:
    """ "is now carded", "is dyed" or, of wool that was only weighed, "is weighed" """
    if weighing.state != wool.holding.state:
        return f"is now {weighing.state}"
    return DONE.get(weighing.step, "is weighed")


def _change(
    found: KnownFleece, wool: Wool, weighing: Weighing, weighed: Weighed, book: Book
) -> str:
    state, shown = weighing.state, Shown(book.settings)
    if state == "drying":
        return f".{WAITS}"
    amount = shown.mass(abs(weighed.gained_mg) / 1000)
    worked = weighing.step or is_step(wool.weighed_as, state)
    if worked and weighed.gained_mg <= 0:
        return f": {amount} went on the way{_compared(found, wool, weighing, weighed, book)}."
    return f": {amount} {'more' if weighed.gained_mg > 0 else 'less'} than the book had."


def _compared(
    found: KnownFleece, wool: Wool, weighing: Weighing, weighed: Weighed, book: Book
) -> str:
    """What went, in percent of what was taken, beside what usually goes."""
    shown, steps = Shown(book.settings), book.settings.steps
    lost_mg = -weighed.gained_mg
    taken_mg = weighing.weight.mg + lost_mg
    if taken_mg <= 0:
        return ""
    lost = f", {shown.percent(100 * lost_mg / taken_mg)} of it"
    usual = usual_loss(found.fleece, steps, wool.weighed_as, weighing.state, learn(book))
    if usual is None or weighing.step:
        return lost
    return f"{lost}; {shown.percent_range(usual)} is usual"


def dried_doubted(doubt: Doubt, one: Drying, weighing: Weighing, shown: Shown) -> str:
    """What is asked before wool is entered as dry that lost more, or less, than can well be."""
    now, had = shown.mass(weighing.weight.mg / 1000), shown.mass(one.before_g or 0.0)
    if doubt.what == "less":
        gone = shown.percent(100 * doubt.lost)
        return f"{now} of {had}: {gone} would be gone. Tick this if it is right so."
    return f"{now}, and {had} before the wash. Weigh it once more, or tick this."
