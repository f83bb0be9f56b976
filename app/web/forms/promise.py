"""The small forms of a skein in its place: how much is promised, how much was used."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from app.book.settings import Settings
from app.web.forms.reader import Reader


@dataclass(frozen=True, slots=True)
class Asked:
    """A skein for a part; `mm` is None for the whole of what is free."""

    part_id: str
    holding_id: str
    mm: int | None


@dataclass(frozen=True, slots=True)
class Used:
    """How much of a promised skein was knit: `mm`, or down to `left_mg`, or all where both None."""

    mm: int | None
    left_mg: int | None
    day: date


def read_asked(values: Mapping[str, object], settings: Settings) -> tuple[Reader, Asked]:
    """What was asked of "put a skein here"."""
    reader = Reader(values, settings)
    holding_id = reader.text("holding_id", longest=40)
    if not holding_id:
        reader.errors.setdefault("holding_id", "Choose a skein.")
    asked = Asked(reader.text("part_id", longest=40), holding_id, reader.length("amount"))
    _some(reader, "amount", asked.mm)
    return reader, asked


def read_amount(values: Mapping[str, object], settings: Settings) -> tuple[Reader, int]:
    """What a promise is to be changed to, in mm."""
    reader = Reader(values, settings)
    mm = reader.length("amount")
    if mm is None:
        reader.errors.setdefault("amount", "Say how much of it, or take it off.")
    _some(reader, "amount", mm)
    return reader, mm or 0


def read_used(
    values: Mapping[str, object], settings: Settings, promised_mm: int, today: date
) -> tuple[Reader, Used]:
    """What was knit of a promised skein; at most what was promised of it."""
    reader = Reader(values, settings)
    used = Used(reader.length("used"), reader.mass("left"), reader.day("day") or today)
    _some(reader, "used", used.mm)
    if used.mm is not None and used.left_mg is not None:
        reader.errors.setdefault("left", "Say how much was used or what is left, not both.")
    if used.mm is not None and used.mm > promised_mm:
        reader.errors.setdefault("used", "That is more than is promised here. Promise more first.")
    return reader, used


def _some(reader: Reader, field: str, mm: int | None) -> None:
    if mm is not None and mm <= 0:
        reader.errors.setdefault(field, "This must be more than zero.")
