"""Printed rows as they are shown: each with its standing in words and its source by a letter."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from string import ascii_lowercase

from app.book.settings import Settings
from app.web.pages.table import Row, Table
from app.web.shown import Shown

STANDINGS = {"memory": "from memory"}
"""How a standing is said where the plain word would not say enough."""


@dataclass(frozen=True, slots=True)
class Source:
    """A source by the letter its rows carry."""

    letter: str
    text: str
    standing: str


@dataclass(frozen=True, slots=True)
class ShownRow:
    """A row with its place in the address, and the letter of its source."""

    id: str
    word: str
    cells: tuple[str, ...]
    standing: str
    letter: str
    source: str


@dataclass(frozen=True, slots=True)
class ShownSheet:
    """A sheet with its columns as they are over the rows."""

    caption: str
    first: str
    columns: tuple[str, ...]
    rows: tuple[ShownRow, ...]
    prose: bool


@dataclass(frozen=True, slots=True)
class Printed:
    """All that is printed of a table."""

    sheets: tuple[ShownSheet, ...]
    sources: tuple[Source, ...]


@lru_cache(maxsize=256)
def printed(table: Table, settings: Settings) -> Printed:
    """The rows of a table in these settings; they never change while the program runs."""
    sources: dict[tuple[str, str], Source] = {}
    ids: dict[str, int] = {}
    sheets = tuple(
        ShownSheet(
            sheet.caption,
            sheet.first,
            sheet.columns,
            tuple(_shown(row, sources, ids) for row in sheet.rows),
            sheet.prose,
        )
        for sheet in table.sheets(Shown(settings))
    )
    return Printed(sheets, tuple(sources.values()))


def said_standing(standing: str) -> str:
    """How far a row is to be trusted, in words."""
    return STANDINGS.get(standing, standing)


def _shown(row: Row, sources: dict[tuple[str, str], Source], ids: dict[str, int]) -> ShownRow:
    standing = said_standing(row.standing)
    source = sources.setdefault(
        (row.source, standing), Source(_letter(len(sources)), row.source, standing)
    )
    return ShownRow(_id(row.word, ids), row.word, row.cells, standing, source.letter, row.source)


def _letter(number: int) -> str:
    """a to z, then aa, ab …"""
    more, last = divmod(number, len(ascii_lowercase))
    return (ascii_lowercase[more - 1] if more else "") + ascii_lowercase[last]


def _id(word: str, ids: dict[str, int]) -> str:
    """A row's place in the address: its word, numbered where several have it."""
    slug = "-".join(("r", *_words(word)))
    ids[slug] = ids.get(slug, 0) + 1
    return f"{slug}-{ids[slug]}" if ids[slug] > 1 else slug


def _words(text: str) -> Iterator[str]:
    plain = "".join(sign if sign.isalnum() else " " for sign in text.casefold())
    yield from plain.split()
