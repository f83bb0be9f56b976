"""The sizes of a pattern as a table of fields: a column for each size, rows for each of its parts.

size_2, width_2, stated_2                      the second size
part_1, copies_1, place_1, share_1             the first part, in every size
cast_on_1_2, widest_1_2, rows_1_2, length_1_2  the first part in the second size
"""

import re
from collections.abc import Callable, Mapping
from typing import TypeVar

from app.book.pattern import Pattern, PatternSize, Share, SizePart
from app.book.settings import Settings
from app.book.words import PLACES
from app.planning.design import part_id
from app.web.forms.reader import Reader
from app.web.forms.yarn import read_line
from app.web.shown import Shown

Value = TypeVar("Value")

MOST_SIZES, MOST_PARTS = 12, 12
FIRST_SIZES, FIRST_PARTS = 5, 4
MORE = {"sizes": 3, "parts": 2}
"""How many columns and parts a form may have, begins with, and gets when more are asked for."""

WIDTH_MM, PIECE_MM = (50, 5_000), (1, 5_000)
YARN_MM = (1_000, 20_000_000)
MOST_COUNT, MOST_COPIES = 5_000, 20
"""What a garment is believed to be: 5 to 500 cm, 1 m to 20 km of yarn, 5000 stitches or rows."""

STATED_IN = {"length": "as a length", "balls": "in balls of this length"}
PAIRS = re.compile(r"\b(?:sleeves?|fronts|cuffs|mittens?|mitts?|gloves?|socks?)\b", re.I)
OF_SIZE = ("size", "width", "stated")
OF_PIECE = {"cast_on": "cast on", "widest": "widest", "rows": "rows", "length": "length"}
"""The fields of a size, and of a piece in one size with what they are called."""


def read_sizes(reader: Reader) -> tuple[tuple[PatternSize, ...], tuple[Share, ...]]:
    """The sizes typed and the shares of their parts; blank columns and parts are left out."""
    columns, parts = _used_columns(reader), _used_parts(reader)
    _names_once(reader, [f"size_{k}" for k in columns], "Two sizes have this name.")
    _names_once(reader, [f"part_{p}" for p in parts], "Two parts have this name.")
    sizes = tuple(_read_size(reader, k, parts) for k in columns)
    shares = [(read_line(reader, f"part_{p}"), _read_share(reader, p)) for p in parts]
    return sizes, tuple(Share(name, pct) for name, pct in shares if pct is not None)


def count_of(text: str, what: str) -> int:
    """How many "sizes" or "parts" a form says it has fields for; the usual number where it does
    not say."""
    first, most = {"sizes": (FIRST_SIZES, MOST_SIZES), "parts": (FIRST_PARTS, MOST_PARTS)}[what]
    return min(int(text), most) if text.isascii() and text.isdigit() and len(text) < 4 else first


def with_more(values: Mapping[str, str], what: str) -> dict[str, str]:
    """The fields of a form with room for more "sizes" or "parts"."""
    most = {"sizes": MOST_SIZES, "parts": MOST_PARTS}[what]
    return {**values, what: str(min(most, count_of(values.get(what, ""), what) + MORE[what]))}


def size_values(pattern: Pattern | None, settings: Settings) -> dict[str, str]:
    """What the table of fields holds for a pattern; a new one names the usual parts."""
    if pattern is None or not pattern.sizes:
        usual = {"part_1": "Body", "part_2": "Sleeves", "copies_2": "2"}
        return {**usual, **_counts(FIRST_SIZES, FIRST_PARTS), "stated_in": "length"}
    shown = Shown(settings)
    values = {"stated_in": "length"}
    shares = {one.name: one.pct for one in pattern.shares}
    parts = {one.name: one for size in reversed(pattern.sizes) for one in size.parts}
    numbers = {name: p for p, name in enumerate(parts, 1)}
    for name, p in numbers.items():
        values |= {f"part_{p}": name, f"copies_{p}": str(parts[name].copies)}
        values[f"place_{p}"] = parts[name].place
        values[f"share_{p}"] = shown.field_number(shares.get(name))
    for k, size in enumerate(pattern.sizes, 1):
        values |= _of_size(k, size, numbers, shown)
    return values | _counts(len(pattern.sizes), max(len(parts), FIRST_PARTS))


def usual_copies(name: str) -> int:
    """Two of what comes in pairs, one of anything else."""
    return 2 if PAIRS.search(name) else 1


def _counts(sizes: int, parts: int) -> dict[str, str]:
    return {"sizes": str(sizes), "parts": str(parts)}


def _of_size(k: int, size: PatternSize, numbers: dict[str, int], shown: Shown) -> dict[str, str]:
    values = {
        f"size_{k}": size.name,
        f"width_{k}": shown.field_size(size.width_mm),
        f"stated_{k}": shown.field_length(size.stated_mm),
    }
    for part in size.parts:
        p = numbers[part.name]
        for field in ("cast_on", "widest", "rows"):
            count = getattr(part, field)
            values[f"{field}_{p}_{k}"] = "" if count is None else str(count)
        values[f"length_{p}_{k}"] = shown.field_size(part.length_mm)
    return values


def _used_columns(reader: Reader) -> list[int]:
    """The columns in which anything is typed."""
    parts = range(1, count_of(reader.typed("parts"), "parts") + 1)
    return [
        k
        for k in range(1, count_of(reader.typed("sizes"), "sizes") + 1)
        if any(reader.typed(f"{field}_{k}") for field in OF_SIZE)
        or any(reader.typed(f"{field}_{p}_{k}") for field in OF_PIECE for p in parts)
    ]


def _used_parts(reader: Reader) -> list[int]:
    """The parts that are named, or of which anything is typed."""
    sizes = range(1, count_of(reader.typed("sizes"), "sizes") + 1)
    return [
        p
        for p in range(1, count_of(reader.typed("parts"), "parts") + 1)
        if reader.typed(f"part_{p}")
        or any(reader.typed(f"{field}_{p}_{k}") for field in OF_PIECE for k in sizes)
    ]


def _read_size(reader: Reader, k: int, parts: list[int]) -> PatternSize:
    name = read_line(reader, f"size_{k}", longest=30)
    if not name:
        reader.refuse(f"size_{k}", f"Give the size in column {k} a name.")
    where = f"size {name or k}"
    width = _cell(reader, f"width_{k}", f"Width, {where}", lambda one: _width(reader, one))
    stated = _cell(reader, f"stated_{k}", f"Yarn, {where}", lambda one: _yarn(reader, one))
    pieces = tuple(_read_piece(reader, p, k, where) for p in parts)
    return PatternSize(name, width or 1, stated, pieces)


def _read_piece(reader: Reader, p: int, k: int, where: str) -> SizePart:
    name = read_line(reader, f"part_{p}", longest=60)
    if not name:
        reader.refuse(f"part_{p}", "Give this part a name, such as body, sleeves or yoke.")

    def count(field: str, least: int) -> int | None:
        said = f"{name or 'a part'}, {OF_PIECE[field]}, {where}"
        most = MOST_COUNT
        return _cell(
            reader, f"{field}_{p}_{k}", said, lambda one: reader.whole(one, least=least, most=most)
        )

    said = f"{name or 'a part'}, length, {where}"
    least, most = PIECE_MM
    copies = reader.whole(f"copies_{p}", least=1, most=MOST_COPIES)
    return SizePart(
        name=name,
        place=reader.choice(f"place_{p}", PLACES, default="") or "",
        copies=copies or usual_copies(name),
        cast_on=count("cast_on", 0),
        widest=count("widest", 1),
        rows=count("rows", 1),
        length_mm=_cell(
            reader, f"length_{p}_{k}", said, lambda one: reader.size(one, least=least, most=most)
        ),
    )


def _cell(
    reader: Reader, field: str, said: str, read: Callable[[str], Value | None]
) -> Value | None:
    """What a cell holds; its fault begins with the place in the table."""
    found = read(field)
    fault = reader.errors.get(field)
    if fault is not None and not fault.startswith(said):
        reader.errors[field] = f"{said}: {fault}"
    return found


def _width(reader: Reader, field: str) -> int | None:
    least, most = WIDTH_MM
    return reader.size(field, required=True, least=least, most=most)


def _yarn(reader: Reader, field: str) -> int | None:
    """A length of yarn, or a number of balls of the length that is given for one."""
    least, most = YARN_MM
    stated_in = reader.choice("stated_in", STATED_IN, default="length")
    if stated_in != "balls" or not reader.typed(field):
        return reader.length(field, least=least, most=most)
    ball = reader.length("ball", least=least, most=most)
    balls = reader.number(field, least=0.01, most=1_000)
    if ball is None:
        reader.refuse("ball", "Say how long one ball is.")
    return round(balls * ball) if balls and ball else None


def _read_share(reader: Reader, p: int) -> float | None:
    return reader.number(f"share_{p}", unit="%", least=0.1, most=100.0)


def _names_once(reader: Reader, fields: list[str], fault: str) -> None:
    """Names that differ by capitals and blanks alone are one name."""
    seen: set[str] = set()
    for field in fields:
        name = part_id("", read_line(reader, field)).casefold()
        if name != part_id("", "") and name in seen:
            reader.refuse(field, fault)
        seen.add(name)
