"""The short form of a finished skein: turns before and after the wash, and its weight."""

from collections.abc import Mapping
from datetime import date

from app.book.book import Book
from app.book.event import Balance
from app.book.settings import Settings
from app.book.words import OPEN_STATES
from app.web.forms.options import with_none
from app.web.forms.reader import Reader
from app.web.forms.skein import ask_if_odd, read_lengths, read_skein, read_weight, skein_values
from app.web.shown import Shown
from app.work.skein_add import NewSkein
from app.work.skein_measure import Weighing

NOT_AFTER = "Give its length once it was washed and dried: turns, or a length."
LONGER = "It is longer than before the wash. Count once more, or tick this."
SHORTER = 0.5
"""A skein that lost more than half its length is asked about (practice)."""


def plans_to_promise(book: Book) -> dict[str, str]:
    """The garments a skein may be for."""
    open_plans = [one for one in book.plans if one.state in OPEN_STATES]
    named = sorted(open_plans, key=lambda one: (one.priority, one.name.casefold()))
    return with_none("nothing in particular", {one.id: one.name for one in named})


def finish_values(settings: Settings, **chosen: str) -> dict[str, str]:
    """What the form holds when it is opened."""
    return skein_values(settings, **chosen)


def read_finished(
    values: Mapping[str, object], settings: Settings, book: Book
) -> tuple[Reader, NewSkein, str | None]:
    """A new skein and the garment it is for; it counts only where the reader is ok."""
    reader, skein = read_skein(values, settings, book)
    if not any(one.finished for one in skein.lengths):
        reader.refuse("turns", NOT_AFTER)
    before = next((one.mm for one in skein.lengths if not one.finished), 0)
    after = next((one.mm for one in skein.lengths if one.finished), 0)
    _ask_if_shrunk_oddly(reader, before, after)
    return reader, skein, _plan(reader, book)


def read_washed(
    values: Mapping[str, object],
    settings: Settings,
    book: Book,
    held: Balance,
) -> tuple[Reader, Weighing, str | None]:
    """What was measured of a skein on the shelf that the book has as `held`, now that it is
    washed, and the garment it is for."""
    reader = Reader(values, settings)
    lengths = tuple(one for one in read_lengths(reader, required=False) if one.finished)
    if not lengths:
        reader.refuse("turns", NOT_AFTER)
    weight = read_weight(reader) if reader.typed("mass") else None
    day = reader.day("day", until=date.today()) or date.today()
    mm = lengths[-1].mm if lengths else 0
    ask_if_odd(reader, weight.mg if weight else held.mg, mm)
    _ask_if_shrunk_oddly(reader, held.mm, mm)
    return reader, Weighing(day, weight, lengths), _plan(reader, book)


def _plan(reader: Reader, book: Book) -> str | None:
    return reader.choice("plan", plans_to_promise(book), default="") or None


def _ask_if_shrunk_oddly(reader: Reader, before_mm: int, after_mm: int) -> None:
    if not reader.ok or not before_mm or reader.flag("sure"):
        return
    if after_mm > before_mm:
        reader.refuse("sure", LONGER)
    elif after_mm < before_mm * SHORTER:
        lost = Shown(reader.settings).percent(100 * (1 - after_mm / before_mm))
        reader.refuse("sure", f"It lost {lost} of its length. Count once more, or tick this.")
