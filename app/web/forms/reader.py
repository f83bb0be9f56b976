"""Reading a form: each field once, its fault in words beside it, what was typed kept as it was."""

import re
from collections.abc import AsyncIterator, Callable, Iterable, Mapping
from datetime import date
from typing import Annotated, TypeVar

from fastapi import Depends, Request
from starlette.datastructures import FormData, ImmutableMultiDict, UploadFile

from app.book.settings import Settings
from app.craft.typed import Decimal, Unclear, exact_mm, length_mm, mass_mg, number, whole
from app.web.forms.filled import Filled
from app.web.shown import Shown

Value = TypeVar("Value")
Amount = TypeVar("Amount", int, float)
Word = TypeVar("Word", bound=str)

COLOUR = re.compile("#[0-9a-f]{6}")
MISSING = "This is needed."
MEANWHILE = (
    "This was changed meanwhile, in another window or on another device. Nothing was overwritten. "
    "What you typed stands below; save it again if it is to take the place of what is there now."
)
LARGEST = 1_000_000_000
"""The largest count a field takes where it names no limit of its own."""


async def posted(request: Request) -> AsyncIterator[FormData]:
    """The fields of a form as they were sent; a refusal may show them again."""
    async with request.form() as form:
        request.state.typed = {k: v for k, v in form.items() if isinstance(v, str)}
        yield form


Posted = Annotated[FormData, Depends(posted)]


class Reader:
    """Reads typed fields in the maker's units; `errors` maps a field to what is to be done.

    A field left empty that need not be filled is None (text: an empty string). A field at fault
    is None too, and has its entry in `errors`.
    """

    def __init__(self, values: Mapping[str, object], settings: Settings) -> None:
        self.settings = settings
        self.errors: dict[str, str] = {}
        self.values = {k: v for k, v in values.items() if isinstance(v, str)}
        self.files = {k: v for k, v in values.items() if isinstance(v, UploadFile)}
        self._all = values
        self._shown = Shown(settings)

    @property
    def ok(self) -> bool:
        """True while no field is at fault."""
        return not self.errors

    @property
    def stamp(self) -> str:
        """The stamp of the record as it was when the form was opened."""
        return self.values.get("stamp", "")

    def filled(self, **more: str) -> Filled:
        """The form as it was typed, with its faults, to be shown again."""
        return Filled({**self.values, **more}, dict(self.errors), self.stamp)

    def over(self, now: Mapping[str, str], stamp: str, words: Mapping[str, str]) -> Filled:
        """The form as it was typed over a record that was changed meanwhile: each field that
        differs says what is there `now`, a choice in its `words`; it can be saved over it."""
        typed = {name: text.replace("\r\n", "\n") for name, text in self.values.items()}
        other = {name: there for name, there in now.items() if typed.get(name, "") != there}
        said = {name: words.get(there, there) or "nothing" for name, there in other.items()}
        errors = {name: f"There now: {there}." for name, there in said.items()}
        return Filled({**now, **typed}, errors, stamp, MEANWHILE)

    def refuse(self, name: str, message: str) -> None:
        """Put a fault beside a field; the first one found stays."""
        self.errors.setdefault(name, message)

    def typed(self, name: str) -> str:
        """What was typed, without blanks around it."""
        return self.values.get(name, "").strip()

    def as_shown(self, shown: Mapping[str, str], *names: str) -> bool:
        """Whether these fields were left as the form showed them: a figure that was shown rounded
        then keeps all its digits."""
        return all(self.typed(name) == shown.get(name, "").strip() for name in names)

    def text(self, name: str, required: bool = False, longest: int = 200) -> str:
        """A line or more of text, without control characters, of at most `longest` signs."""
        lines = self.values.get(name, "").replace("\r\n", "\n").replace("\r", "\n")
        text = "".join(map(_writable, lines)).strip()
        if required and not text:
            self.refuse(name, MISSING)
        if len(text) > longest:
            self.refuse(name, f"This takes at most {longest} signs; there are {len(text)}.")
        return text

    def mass(
        self,
        name: str,
        required: bool = False,
        unit: str | None = None,
        least: int = 0,
        most: int = LARGEST,
    ) -> int | None:
        """A mass in mg; a bare number takes `unit`, by default the maker's."""
        unit = unit or self.settings.mass_unit
        found = self._read(name, required, lambda text: mass_mg(text, unit, self._decimal))
        return self._within(name, found, least, most, lambda mg: self._shown.mass(mg / 1000))

    def length(
        self,
        name: str,
        required: bool = False,
        unit: str | None = None,
        least: int = 0,
        most: int = LARGEST,
    ) -> int | None:
        """A length in mm; a bare number takes `unit`, by default the maker's unit of yarn."""
        unit = unit or self.settings.length_unit
        found = self._read(name, required, lambda text: length_mm(text, unit, self._decimal))
        of_yarn = unit == self.settings.length_unit
        said = (lambda mm: self._shown.length(mm / 1000)) if of_yarn else self._shown.size
        return self._within(name, found, least, most, said)

    def size(
        self, name: str, required: bool = False, least: int = 0, most: int = LARGEST
    ) -> int | None:
        """A measure of a body or of fabric in mm; a bare number is in cm beside metres, else in."""
        return self.length(name, required, self._shown.size_unit, least, most)

    def span(self, name: str, least: float, most: float) -> float | None:
        """A width or height counted over, in mm, not rounded: 4 in are 101.6; else as `size`."""
        unit = self._shown.size_unit
        found = self._read(name, False, lambda text: float(exact_mm(text, unit, self._decimal)))
        return self._within(name, found, least, most, self._shown.size)

    def number(
        self,
        name: str,
        required: bool = False,
        unit: str = "",
        least: float | None = None,
        most: float | None = None,
    ) -> float | None:
        """A plain number; `unit` is a sign that may be typed after it, such as "%"."""
        found = self._read(name, required, lambda text: number(text, self._decimal, unit))
        return self._within(name, found, least, most, self._shown.field_number)

    def whole(
        self, name: str, required: bool = False, least: int | None = 0, most: int | None = LARGEST
    ) -> int | None:
        """A whole number."""
        found = self._read(name, required, whole)
        return self._within(name, found, least, most, self._shown.number)

    def day(self, name: str, required: bool = False, until: date | None = None) -> date | None:
        """A day as the browser sends it, not later than `until`: year, month and day."""
        day = self._read(name, required, _day)
        if day and until and day > until:
            self.refuse(
                name, f"This day has not come yet: give {self._shown.day(until)} or before."
            )
            return None
        return day

    def choice(self, name: str, options: Iterable[Word], default: str | None = None) -> Word | None:
        """One of `options`; with a `default` the field may be absent."""
        chosen = self.values.get(name, default)
        for option in options:
            if option == chosen:
                return option
        self.refuse(name, "Choose one of these.")
        return None

    def colour(self, name: str) -> str:
        """A colour as "#rrggbb", or an empty string while its box is not ticked."""
        colour = self.typed(name).lower()
        if not self.flag(f"{name}_known") or not colour:
            return ""
        if not COLOUR.fullmatch(colour):
            self.refuse(name, "Choose a colour from the field.")
        return colour

    def flag(self, name: str) -> bool:
        """True where a box was ticked."""
        return self.values.get(name, "") not in ("", "0")

    def many(self, prefix: str) -> list[str]:
        """The names of all fields that begin with `prefix`, in the order they were sent."""
        return [name for name in self.values if name.startswith(prefix)]

    def all(self, name: str) -> list[str]:
        """Every value of a field that was sent more than once."""
        if isinstance(self._all, ImmutableMultiDict):
            return [one for one in self._all.getlist(name) if isinstance(one, str)]
        return [self.values[name]] if name in self.values else []

    @property
    def _decimal(self) -> Decimal:
        return self.settings.decimal

    def _read(self, name: str, required: bool, read: Callable[[str], Value]) -> Value | None:
        text = self.typed(name)
        if not text:
            if required:
                self.refuse(name, MISSING)
            return None
        try:
            return read(text)
        except Unclear as unclear:
            self.refuse(name, str(unclear))
            return None

    def _within(
        self,
        name: str,
        found: Amount | None,
        least: Amount | None,
        most: Amount | None,
        said: Callable[[Amount], str],
    ) -> Amount | None:
        if found is None:
            return None
        if least is not None and found < least:
            self.refuse(name, f"This must be {said(least)} or more.")
            return None
        if most is not None and found > most:
            self.refuse(name, f"This must be {said(most)} or less.")
            return None
        return found


def _writable(sign: str) -> str:
    """A sign as it is kept: odd spaces plain, control signs gone."""
    if sign in "\n\t" or sign.isprintable():
        return sign
    return " " if sign.isspace() else ""


def _day(text: str) -> date:
    try:
        day = date.fromisoformat(text)
    except ValueError:
        raise Unclear("Give the day as year, month and day, as in 2026-03-01.") from None
    if not 1900 <= day.year <= 2200:
        raise Unclear("Give a day between the years 1900 and 2200.")
    return day
