"""The form of a weighing of a fleece's wool: all of it, or a part that was taken and worked."""

from datetime import date

from app.book.book import Book
from app.book.fleece import Fleece
from app.book.words import Step, WoolState
from app.craft.typed import Unclear, mass_mg
from app.planning.learning import learn
from app.web.forms.filled import Filled
from app.web.forms.fleece import fleece_stamp, read_weighing
from app.web.forms.reader import Reader
from app.web.shown import Shown
from app.work.fleece_doubt import Doubt, doubt_of
from app.work.fleece_find import Wool
from app.work.fleece_step import reading_state
from app.work.fleece_weigh import Weighing
from app.work.skein_readings import Weight

DONE = {
    "all": "all of it",
    "part": "a part of it: the rest stays as it is",
}
SAME = (
    "A part is kept apart once something was done to it: choose its new state or the work, or "
    "weigh all."
)
WORKED: dict[Step, str] = {
    "": "what the state says, or only weighed",
    "pick": "picked or teased open",
    "card": "carded once more",
    "comb": "combed once more",
    "dye": "dyed",
}
"""Work that may leave the state of the wool as it was."""

REASONS = (
    "weighed again",
    "dry or damp weather",
    "the scale was off",
    "typed wrongly before",
    "some was lost or taken",
)
"""Why the book is put right, to choose from or to write over."""

MOST_PASSES = 99
NEXT: dict[str, WoolState] = {
    "raw": "scoured",
    "skirted": "scoured",
    "drying": "scoured",
    "scoured": "carded",
}
"""The state that wool of the work list has come to."""


def weighing_values(fleece: Fleece, wool: Wool, taken: str, today: date) -> Filled:
    """The form when it is opened; `taken` is the amount that the work list had to be done."""
    part, state = _is_part(taken, wool), wool.holding.state or "raw"
    values = {
        "wool": wool.holding.id,
        "state": NEXT.get(state, state) if taken else state,
        "done": "part" if part else "all",
        "taken": taken if part else "",
        "day": today.isoformat(),
        "step": "",
        "passes": "",
        "before": "",
        "waste": "",
        "reason": REASONS[0],
    }
    return Filled(values, {}, fleece_stamp(fleece, wool.holding))


def read_wool_weighing(
    reader: Reader, fleece: Fleece, wool: Wool, book: Book, today: date
) -> Weighing:
    """The weighing as typed; good where the reader is ok. What cannot well be is asked about."""
    typed = read_weighing(reader, today)
    weighing = Weighing(
        weight=typed.weight,
        state=typed.state,
        day=typed.day,
        taken_mg=_taken(reader, wool),
        before=_before(reader, wool),
        step=reader.choice("step", WORKED, default="") or "",
        waste_mg=reader.mass("waste"),
        passes=reader.whole("passes", most=MOST_PASSES) or 0,
        reason=reader.text("reason", longest=200),
        colour=reader.colour("colour"),
        colour_name=reader.text("colour_name", longest=60),
    )
    same = weighing.state == wool.holding.state and not weighing.step
    if weighing.taken_mg is not None and same:
        reader.refuse("state", SAME)
    if reader.ok and not reader.flag("sure"):
        had = weighing.before.mg if weighing.before else round(1000 * wool.g)
        taken = had if weighing.taken_mg is None else weighing.taken_mg
        weighed = weighing.weight.mg
        steps, learnt = book.settings.steps, learn(book)
        states = (wool.weighed_as, weighing.state)
        doubt = doubt_of(fleece, steps, *states, taken, weighed, learnt)
        if doubt:
            reader.refuse("sure", _asked(doubt, wool, weighing, taken, Shown(book.settings)))
    return weighing


def _before(reader: Reader, wool: Wool) -> Weight | None:
    """What all of the wool weighed before the work, if that was weighed."""
    mg = reader.mass("before", least=1)
    if mg is None:
        return None
    if reader.typed("done") == "part":
        reader.refuse("before", "Of a part, say above how much was taken.")
    wet = reading_state(wool.holding.state or "scoured")
    if wet == "damp":
        reader.refuse("before", "It was damp before: then the book keeps what it had.")
    return Weight(mg, reader.typed("before"), reader.settings.mass_unit, wet)


def _taken(reader: Reader, wool: Wool) -> int | None:
    """The part of the wool that was taken, in mg; None for all of it."""
    held = round(1000 * wool.g)
    if reader.choice("done", DONE, default="all") == "all":
        return None
    taken = reader.mass("taken", required=True, least=1)
    if taken is not None and taken > held:
        has = Shown(reader.settings).mass(wool.g)
        reader.refuse("taken", f"The book has {has} of it. Weigh all of it first if it has more.")
    return None if taken == held else taken


def _is_part(taken: str, wool: Wool) -> bool:
    try:
        return 0 < mass_mg(taken, "g", ".") < round(1000 * wool.g)
    except Unclear:
        return False


def _asked(doubt: Doubt, wool: Wool, weighing: Weighing, taken: int, shown: Shown) -> str:
    before, after = wool.holding.state or "", weighing.state
    now, had = shown.mass(weighing.weight.mg / 1000), shown.mass(taken / 1000)
    if doubt.what == "back":
        return f"This goes back from {before} to {after}. Tick this if it is right so."
    if doubt.what == "more":
        return f"{now} is more than the {had} that were taken. Weigh again, or tick this."
    usual = (
        f"; from {before} to {after} about {shown.percent(100 * doubt.usual)} is usual"
        if (doubt.usual is not None and before != after)
        else ""
    )
    part = " If only a part of it was done, say so above." if weighing.taken_mg is None else ""
    lost = shown.percent(100 * doubt.lost)
    return f"{now} of {had}: {lost} would be gone{usual}.{part} Tick this if it is right so."
