"""The page on which the colours along a skein are noted."""

from dataclasses import dataclass

from app.book.book import Book
from app.book.holding import Holding
from app.planning.colours_along import colour_at
from app.web.forms.filled import Filled
from app.web.forms.skein_colours import LINES

SAMPLES = 60
"""Pieces the strip of its colours is drawn in."""


@dataclass(frozen=True, slots=True)
class SkeinColoursPage:
    """`strip` are its colours from the outer end on; `promised` names where it is knit, by the id
    of the promise."""

    skein: Holding
    form: Filled
    lines: int
    strip: tuple[str, ...]
    promised: dict[str, str]


def skein_colours_page(book: Book, skein: Holding, form: Filled) -> SkeinColoursPage:
    """The page of one skein."""
    balance = book.balances.get(skein.id)
    whole = balance.mm / 1000 if balance else 0.0
    strip = (colour_at(skein, whole * (at + 0.5) / SAMPLES) for at in range(SAMPLES))
    promised = {
        one.id: f"{book.part[one.part_id].name} of {book.plan[one.plan_id].name}"
        for one in book.promises
        if one.holding_id == skein.id
    }
    return SkeinColoursPage(skein, form, LINES, tuple(strip) if skein.colours else (), promised)
