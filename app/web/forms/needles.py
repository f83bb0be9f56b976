"""The forms of a garment on the needles: ticks, a ball weighed, knitting undone."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, datetime

from app.book.settings import Settings
from app.web.forms.reader import Reader
from app.work.knit_rip import RipBack
from app.work.knit_tick import Tap
from app.work.knit_weigh import BallWeighed

Piece = tuple[str, int]
"""A part and which piece of it."""

STEPS: dict[str, str] = {
    "1000": "whole grams",
    "100": "tenths of a gram",
    "2835": "tenths of an ounce",
    "283": "hundredths of an ounce",
}
"""What a scale shows, by its step in mg."""

OUNCES = re.compile(r"\b(oz|ounces?)\b", re.IGNORECASE)
HUNDREDTHS = re.compile(r"[.,]\d\d")
MOST_ROWS = 100_000
LONGEST_ID = 60
ODD = "What was sent could not be read. Go back to the page and try again."


@dataclass(frozen=True, slots=True)
class Weighed:
    """A ball weighed, as it was typed; `id` is made once for each weighing, `rows` of None are
    those that are ticked off."""

    id: str
    piece: Piece
    rows: int | None
    holding_id: str
    mg: int
    typed: str
    scale_mg: int
    day: date
    minute: int
    sure: bool

    def at(self, rows: int) -> BallWeighed:
        """The weighing where so many rows of the piece are done."""
        return BallWeighed(
            *self.piece,
            rows,
            self.holding_id,
            self.mg,
            self.typed,
            self.scale_mg,
            self.day,
            self.minute,
            self.sure,
        )


def read_taps(
    values: Mapping[str, object], settings: Settings, done: Mapping[Piece, int]
) -> tuple[Reader, tuple[Tap, ...]]:
    """Rows ticked off or taken back: each has its own id, part and piece, and either so many rows
    or, with `up_to`, the row that is reached. `done` are the rows done by now."""
    reader = Reader(values, settings)
    up_to = reader.whole("up_to", most=MOST_ROWS) if "up_to" in reader.values else None
    if reader.typed("up_to") == "" and "up_to" in reader.values:
        reader.refuse("up_to", "Say which row you have done.")
    fields = [reader.all(name) for name in ("id", "part_id", "piece", "rows")]
    if len({len(one) for one in fields}) != 1 or not fields[0]:
        reader.refuse("rows", ODD)
        return reader, ()
    taps = []
    for id, part_id, piece, rows in zip(*fields, strict=True):
        if not (0 < len(id) <= LONGEST_ID and piece.isascii() and piece.isdecimal()):
            reader.refuse("rows", ODD)
        elif up_to is not None:
            key = part_id, int(piece[:9])
            taps.append(Tap(id, *key, up_to - done.get(key, 0)))
        elif re.fullmatch("-?[0-9]{1,6}", rows):
            taps.append(Tap(id, part_id, int(piece[:9]), int(rows)))
        else:
            reader.refuse("rows", ODD)
    return reader, tuple(taps)


def read_weighed(
    values: Mapping[str, object], settings: Settings, pieces: Mapping[Piece, int], now: datetime
) -> tuple[Reader, Weighed]:
    """A ball weighed; it counts only where the reader is ok. `pieces` are those of the garment,
    with their rows. Day and minute are those it was typed at, else `now`."""
    reader = Reader(values, settings)
    mg = reader.mass("weight", required=True)
    piece = piece_chosen(reader, pieces)
    rows = reader.whole("rows", most=pieces.get(piece, MOST_ROWS))
    step = reader.choice("scale", STEPS, default="1000") or "1000"
    if not 0 < len(reader.typed("id")) <= LONGEST_ID:
        reader.refuse("weight", ODD)
    day, minute = _when(reader, now)
    typed = reader.text("weight", longest=40)
    return reader, Weighed(
        reader.typed("id"),
        piece,
        rows,
        reader.text("holding_id", required=True, longest=LONGEST_ID),
        mg or 0,
        typed,
        step_of(typed, int(step), settings),
        day,
        minute,
        reader.flag("sure"),
    )


def read_rip(
    values: Mapping[str, object], settings: Settings, piece: Piece, done: int, today: date
) -> tuple[Reader, RipBack]:
    """Knitting undone down to a row of a piece of which `done` rows are done."""
    reader = Reader(values, settings)
    rows = reader.whole("row", required=True, most=MOST_ROWS)
    if rows is not None and rows >= done:
        reader.refuse("row", f"Row {done} is the last that is done: give one before it.")
    day = reader.day("day", until=today) or today
    return reader, RipBack(*piece, rows or 0, reader.mass("ripped"), day)


def step_of(typed: str, step_mg: int, settings: Settings) -> int:
    """The step of the scale: one that shows ounces has a step in ounces, whatever was chosen."""
    bare = not re.search("[a-z]", typed.lower())
    in_ounces = OUNCES.search(typed) or (bare and settings.mass_unit == "oz")
    if not in_ounces or step_mg in (283, 2835):
        return step_mg
    return 283 if HUNDREDTHS.search(typed) else 2835


def usual_step(settings: Settings, last_mg: int | None) -> str:
    """The step a form proposes: that of the last weighing, else that of a kitchen scale."""
    if str(last_mg) in STEPS:
        return str(last_mg)
    return "2835" if settings.mass_unit == "oz" else "1000"


def piece_chosen(reader: Reader, pieces: Mapping[Piece, int]) -> Piece:
    """The piece a form names as "2 part": the number of the piece, then its part."""
    options = {as_choice(one): one for one in pieces}
    return options.get(reader.choice("place", options) or "", ("", 0))


def as_choice(piece: Piece) -> str:
    """A piece as a form names it."""
    return f"{piece[1]} {piece[0]}"


def _when(reader: Reader, now: datetime) -> tuple[date, int]:
    """A weighing that waited on a device brings its day and minute with it."""
    day = reader.day("day", until=now.date())
    if day is None or "day" in reader.errors:
        return now.date(), now.hour * 60 + now.minute
    minute = reader.whole("minute", most=24 * 60 - 1)
    return day, minute or 0
