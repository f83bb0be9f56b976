"""The blanks of a table's calculator: what each takes, and what was asked.

A question is an address, so the values come from its parameters; an amount may be typed in any
unit and arrives in metres, centimetres or grams.
"""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Literal

from app.book.settings import Settings
from app.web.forms.filled import Filled
from app.web.forms.reader import MISSING, Reader

Kind = Literal["number", "whole", "count", "yarn", "size", "wool", "choice", "text", "colour"]
"""`count` is a yarn count, `yarn` a length in m, `size` a length in cm, `wool` a mass in g."""

FOLDED = re.compile(r"\d+\s*/\s*\d+")
LEAST = 1e-6


class Fault(ValueError):
    """What was asked has no answer; `field` is the blank to look at, the message says why."""

    def __init__(self, field: str, message: str) -> None:
        super().__init__(message)
        self.field = field


@dataclass(frozen=True, slots=True)
class Field:
    """A blank by its name in the address; `unit` is the one of a plain number.

    `least` and `most` bound a number, an amount in the unit it arrives in. `options` are those of
    a choice, or what a text offers.
    """

    name: str
    label: str
    kind: Kind = "number"
    unit: str = ""
    hint: str = ""
    optional: bool = False
    least: float = LEAST
    most: float = 1e6
    options: Mapping[str, str] = field(default_factory=dict)

    def unit_in(self, settings: Settings) -> str:
        """The unit a bare number takes."""
        if self.kind == "yarn":
            return settings.length_unit
        if self.kind == "size":
            return "cm" if settings.length_unit == "m" else "in"
        return settings.mass_unit if self.kind == "wool" else self.unit


@dataclass(frozen=True, slots=True)
class Asked:
    """What was asked: numbers and words by the name of their blank."""

    numbers: Mapping[str, float]
    words: Mapping[str, str]

    def __getitem__(self, name: str) -> float:
        """The number of a blank that must be filled."""
        return self.numbers[name]

    def get(self, name: str) -> float | None:
        """The number of a blank, None where it was left empty."""
        return self.numbers.get(name)

    def whole(self, name: str) -> int:
        """The number of a blank that takes whole ones."""
        return int(self.numbers[name])


def read_asked(reader: Reader, fields: tuple[Field, ...]) -> Asked | None:
    """What was typed into the blanks; None where one is at fault, with the reader knowing why."""
    numbers: dict[str, float] = {}
    words: dict[str, str] = {}
    for one in fields:
        if one.kind in WORDS:
            words[one.name] = WORDS[one.kind](reader, one)
        elif (found := NUMBERS[one.kind](reader, one)) is not None:
            numbers[one.name] = found
    return Asked(numbers, words) if reader.ok else None


def filled_first(
    fields: tuple[Field, ...], values: Mapping[str, str], settings: Settings
) -> Filled:
    """The blanks as they stand before anything is asked; a unit shown beside is not repeated."""
    units = {one.name: one.unit_in(settings) for one in fields}
    return Filled({name: text.removesuffix(f" {units[name]}") for name, text in values.items()})


def _count(reader: Reader, one: Field) -> float | None:
    if FOLDED.fullmatch(reader.typed(one.name)):
        reader.refuse(
            one.name, "This is the number of a folded yarn: see the table of plied yarns."
        )
        return None
    return _number(reader, one)


def _number(reader: Reader, one: Field) -> float | None:
    return reader.number(one.name, not one.optional, one.unit, one.least, one.most)


def _whole(reader: Reader, one: Field) -> float | None:
    least = max(0, round(one.least))
    return reader.whole(one.name, not one.optional, least, round(one.most))


def _yarn(reader: Reader, one: Field) -> float | None:
    mm = reader.length(one.name, not one.optional, least=1)
    return None if mm is None else mm / 1000


def _size(reader: Reader, one: Field) -> float | None:
    least, most = max(1, round(10 * one.least)), round(10 * one.most)
    mm = reader.size(one.name, not one.optional, least, most)
    return None if mm is None else mm / 10


def _wool(reader: Reader, one: Field) -> float | None:
    mg = reader.mass(one.name, not one.optional, least=1)
    return None if mg is None else mg / 1000


def _choice(reader: Reader, one: Field) -> str:
    return reader.choice(one.name, one.options, default=next(iter(one.options))) or ""


def _text(reader: Reader, one: Field) -> str:
    return reader.text(one.name, not one.optional, longest=80)


def _colour(reader: Reader, one: Field) -> str:
    reader.values[f"{one.name}_known"] = "1"
    colour = reader.colour(one.name)
    if not colour:
        reader.refuse(one.name, MISSING)
    return colour


NUMBERS: dict[str, Callable[[Reader, Field], float | None]] = {
    "number": _number,
    "whole": _whole,
    "count": _count,
    "yarn": _yarn,
    "size": _size,
    "wool": _wool,
}
WORDS: dict[str, Callable[[Reader, Field], str]] = {
    "choice": _choice,
    "text": _text,
    "colour": _colour,
}
