"""The forms of a skein that is on the shelf: weigh or measure it again, put it away."""

from collections.abc import Mapping
from datetime import date

from app.book.event import Balance
from app.book.settings import Settings
from app.web.forms.fleece_weigh import REASONS
from app.web.forms.reader import Reader
from app.web.forms.skein import ask_if_odd, read_lengths, read_weight, read_wraps, skein_values
from app.work.skein_measure import Weighing
from app.work.skein_put_away import Going

WOOL = {
    "dry": "dry: the book follows the scale",
    "damp": "still damp: the reading is kept, the book stays as it is",
}
GOINGS: dict[str, str] = {
    "given away": "given away or sold",
    "lost or used up": "lost, spoilt, or used for something not planned here",
}
GOING_OF: dict[str, Going] = {
    "given away": "given away",
    "lost or used up": "lost or used up",
}


def read_weighing(
    values: Mapping[str, object], settings: Settings, held: Balance
) -> tuple[Reader, Weighing]:
    """What was measured of a skein that the book has as `held`; it counts only where the reader is
    ok. At least one field is filled."""
    reader = Reader(values, settings)
    weight = read_weight(reader) if reader.typed("mass") else None
    lengths = read_lengths(reader, required=False)
    weighing = Weighing(
        day=reader.day("day") or date.today(),
        weight=weight,
        lengths=lengths,
        wraps=read_wraps(reader),
        reason=reader.text("reason", longest=200),
    )
    if reader.ok and not (weighing.weight or weighing.lengths or weighing.wraps):
        reader.refuse("mass", "Fill in what you measured: its weight, its length or its wraps.")
    _ask_if_odd(reader, weighing, held)
    return reader, weighing


def weighing_values(settings: Settings) -> dict[str, str]:
    """What the form holds when it is opened."""
    return skein_values(settings, reason=REASONS[0])


def read_going(values: Mapping[str, object], settings: Settings) -> tuple[Reader, Going, date]:
    """Where a skein went, and when."""
    reader = Reader(values, settings)
    going = GOING_OF.get(reader.choice("going", GOINGS) or "", "lost or used up")
    return reader, going, reader.day("day") or date.today()


def _ask_if_odd(reader: Reader, weighing: Weighing, held: Balance) -> None:
    """A weight alone tells nothing of the grist: the metres follow it."""
    if not (weighing.lengths or weighing.wraps):
        return
    dry = weighing.weight if weighing.weight and weighing.weight.wool == "dry" else None
    mm = weighing.lengths[-1].mm if weighing.lengths else held.mm
    mg = dry.mg if dry and weighing.lengths else held.mg
    ask_if_odd(reader, mg, mm, weighing.wraps)
