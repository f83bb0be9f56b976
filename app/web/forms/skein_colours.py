"""The form of a skein whose colour runs: which colour at which metre, and which end comes first."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from app.book.holding import ColourAt, Holding
from app.book.plan import Promise
from app.book.settings import Settings
from app.web.forms.reader import Reader
from app.web.shown import Shown

LINES = 6
"""Colours the form has room for; a yarn that changes more often is noted where it changes most."""


@dataclass(frozen=True, slots=True)
class ColoursTyped:
    """The colours, and the promises that are knit from the inside."""

    colours: tuple[ColourAt, ...]
    inside: frozenset[str]


def read_colours(
    values: Mapping[str, object], settings: Settings, promises: Iterable[Promise]
) -> tuple[Reader, ColoursTyped]:
    """What was typed; it counts only where the reader is ok."""
    reader = Reader(values, settings)
    found = [one for at in range(1, LINES + 1) if (one := _line(reader, at))]
    if len({one.mm for one in found}) < len(found):
        reader.refuse("at_1", "Each place along the yarn has one colour.")
    if len(found) == 1:
        reader.refuse("at_1", "Give two places at least, or none if it is of one colour.")
    inside = frozenset(one.id for one in promises if reader.flag(f"inside_{one.id}"))
    return reader, ColoursTyped(tuple(found), inside)


def colours_values(
    skein: Holding, settings: Settings, promises: Iterable[Promise]
) -> dict[str, str]:
    """What the form holds when it is opened."""
    shown = Shown(settings)
    values: dict[str, str] = {}
    for at in range(1, LINES + 1):
        one = skein.colours[at - 1] if at <= len(skein.colours) else None
        values[f"at_{at}"] = shown.field_length(one.mm) if one else ""
        values[f"colour_{at}"] = one.colour if one else ""
        values[f"colour_{at}_known"] = "1" if one else ""
    return values | {f"inside_{one.id}": "1" for one in promises if one.from_inside}


def _line(reader: Reader, at: int) -> ColourAt | None:
    mm, colour = reader.length(f"at_{at}"), reader.colour(f"colour_{at}")
    if mm is None and not colour:
        return None
    if mm is None:
        reader.refuse(f"at_{at}", "Say how far from the outer end.")
    elif not colour:
        reader.refuse(f"colour_{at}", "Choose its colour there, and tick that it looks so.")
    return ColourAt(mm or 0, colour)
