"""The checks of a bobbin's grist that were noted, and how far her singles stray by them."""

from dataclasses import dataclass
from datetime import date
from math import log, sqrt

from app.book.book import Book
from app.book.holding import Holding
from app.craft.spinning import CLOSE

PRIOR_CHECKS = 4
"""Checks that common practice counts for: a hand strays by a tenth along a bobbin (practice)."""


@dataclass(frozen=True, slots=True)
class Noted:
    """A check of a bobbin: the single's tex, the day, and what was typed."""

    reading_id: str
    bobbin: Holding
    day: date
    tex: float
    typed: str


def checks_of(book: Book, yarn_id: str) -> list[Noted]:
    """Every check of a yarn's bobbins, oldest first."""
    bobbins = (one for one in book.holdings if one.kind == "bobbin" and one.yarn_id == yarn_id)
    found = [check for one in bobbins for check in bobbin_checks(book, one)]
    return sorted(found, key=lambda one: (one.day, one.reading_id))


def bobbin_checks(book: Book, bobbin: Holding) -> list[Noted]:
    """The checks of one bobbin, oldest first."""
    return [
        Noted(one.id, bobbin, one.day, one.value / 1000, one.typed)
        for one in book.readings_of.get(bobbin.id, [])
        if one.kind == "grist" and one.value > 0
    ]


def singles_spread(book: Book) -> float:
    """How far her singles stray along a bobbin, as a share (standard deviation in logs): the spread
    of checks about their bobbin's mean, beside a practice that counts for a few of them."""
    squares, free = PRIOR_CHECKS * CLOSE**2, float(PRIOR_CHECKS)
    for bobbin in book.holdings:
        if bobbin.kind == "bobbin":
            logs = [log(one.tex) for one in bobbin_checks(book, bobbin)]
            mean = sum(logs) / len(logs) if logs else 0.0
            squares += sum((one - mean) ** 2 for one in logs)
            free += max(0, len(logs) - 1)
    return sqrt(squares / free)
