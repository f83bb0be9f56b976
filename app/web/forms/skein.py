"""The form of a skein that comes to the shelf: how long, how heavy, of which yarn and fleece."""

from collections.abc import Mapping
from datetime import date

from app.book.book import Book
from app.book.settings import Settings
from app.web.forms.reader import Reader
from app.web.forms.skein_yarn import read_skein_yarn
from app.web.forms.yarn import read_colour, read_line
from app.web.shown import Shown
from app.work.skein_add import NewSkein
from app.work.skein_doubt import skein_doubt
from app.work.skein_readings import Length, Weight, Wraps, by_reel

TAKEN = {
    "now": "take the wool for it off the fleece now, with the usual losses",
    "before": "it was spun before the fleece was last weighed: leave the fleece as it is",
}
WOOL = {
    "dry": "dry",
    "damp": "still damp: it comes with this weight, which its first dry weighing puts right",
}
MEASURED = {"turns", "length", "turns_before", "length_before", "girth"}
MOST_TURNS = 100_000.0
MOST_MM = 100_000_000
WRAPS = (1.0, 150.0)
"""Wraps per inch between which a yarn is believed: rope to sewing thread."""


def read_skein(
    values: Mapping[str, object], settings: Settings, book: Book
) -> tuple[Reader, NewSkein]:
    """What was typed and the skein it describes; the skein counts only where the reader is ok."""
    reader = Reader(values, settings)
    # In the order of the page, which is that of the faults on top of it.
    lengths, weight, wraps = read_lengths(reader), read_weight(reader), read_wraps(reader)
    fleece = reader.choice("fleece", {"", *book.fleece}, default="") or None
    skein = NewSkein(
        yarn=read_skein_yarn(reader, book, fleece_id=fleece),
        lengths=lengths,
        weight=weight,
        wraps=wraps,
        fleece_id=fleece,
        taken_now=reader.choice("taken", TAKEN, default="now") == "now",
        code=read_line(reader, "code", longest=30),
        day=reader.day("day") or date.today(),
        colour=read_colour(reader),
        colour_name=reader.text("colour_name", longest=60),
        place=reader.text("place", longest=80),
        notes=reader.text("notes", longest=4000),
    )
    ask_if_odd(reader, weight.mg, lengths[-1].mm if lengths else 0, wraps)
    return reader, skein


def ask_if_odd(reader: Reader, mg: int, mm: int, wraps: Wraps | None = None) -> None:
    """Ask about yarn that can hardly be, once all fields are good, until its box is ticked."""
    if not reader.ok or reader.flag("sure"):
        return
    doubt = skein_doubt(mg, mm, wraps.thousandths if wraps else None)
    if doubt is None:
        return
    shown = Shown(reader.settings)
    yarn = f"{shown.length(mm / 1000)} in {shown.mass(mg / 1000)} is {shown.grist(doubt.tex)}"
    if doubt.what == "wraps":
        odd = f"yarn of which about {shown.number(doubt.wraps)} wraps are expected in an inch"
        reader.refuse("sure", f"{yarn}, {odd}. Count again, or tick this.")
    else:
        reader.refuse("sure", f"{yarn}: no yarn is so {doubt.what}. Look again, or tick this.")


def skein_values(settings: Settings, **chosen: str) -> dict[str, str]:
    """What the form holds when it is opened, with a yarn or fleece already chosen."""
    girth = Shown(settings).field_length(settings.girth_mm)
    return {
        "girth": girth,
        "wool": "dry",
        "taken": "now",
        "day": date.today().isoformat(),
        **chosen,
    }


def read_lengths(reader: Reader, required: bool = True) -> tuple[Length, ...]:
    """The lengths before and after finishing, each by reel or as such."""
    before = _length(reader, "turns_before", "length_before", finished=False)
    after = _length(reader, "turns", "length", finished=True)
    found = tuple(one for one in (before, after) if one)
    if required and not found and not MEASURED & set(reader.errors):
        reader.refuse("turns", "Say how long it is: in turns of the reel, or as a length.")
    return found


def read_weight(reader: Reader, name: str = "mass") -> Weight:
    """A weight, dry unless it was said to be damp."""
    if not reader.typed(name):
        reader.refuse(name, "Say how much it weighs.")
    mg = reader.mass(name, least=1)
    damp = reader.choice("wool", WOOL, default="dry") == "damp"
    unit = reader.settings.mass_unit
    return Weight(mg or 0, reader.typed(name), unit, wool="damp" if damp else "dry")


def read_wraps(reader: Reader) -> Wraps | None:
    """Wraps per inch."""
    wraps = reader.number("wraps", least=WRAPS[0], most=WRAPS[1])
    return Wraps(round(wraps * 1000), reader.typed("wraps")) if wraps is not None else None


def _length(reader: Reader, turns: str, length: str, finished: bool) -> Length | None:
    if reader.typed(turns) and reader.typed(length):
        reader.refuse(length, "Give turns of the reel or a length, not both.")
        return None
    if reader.typed(turns):
        return _by_reel(reader, turns, finished)
    mm = reader.length(length, least=1, most=MOST_MM)
    if mm is None:
        return None
    return Length(mm, reader.typed(length), reader.settings.length_unit, finished)


def _by_reel(reader: Reader, turns: str, finished: bool) -> Length | None:
    count = reader.number(turns, least=0.5, most=MOST_TURNS)
    girth = reader.length("girth", required=True, least=50, most=10_000)
    if count is None or girth is None:
        return None
    return by_reel(girth, count, reader.typed(turns), finished)
