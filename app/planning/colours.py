"""The colours of a garment's skeins: which read as one, from light to dark, and where a change of
skein would show."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import pairwise

from app.book.book import Book
from app.book.plan import Plan
from app.planning.colours_alike import READS_AS_ONE, apart, lab_of
from app.planning.picture import Picture
from app.planning.picture_piece import Piece

SHOWS = 1.0
"""From this difference on a change of skein can be seen at all."""


@dataclass(frozen=True, slots=True)
class Shade:
    """A skein with its colour ("#rrggbb") and lightness, from 0 for black to 100 for white."""

    holding_id: str
    code: str
    yarn_id: str | None
    colour: str
    lightness: float


@dataclass(frozen=True, slots=True)
class Join:
    """Where one skein follows another in a row of a part, and how far apart their colours are."""

    part_id: str
    part: str
    row: int
    before: Shade
    after: Shade
    difference: float


@dataclass(frozen=True, slots=True)
class Colours:
    """The skeins in families that read as one colour, each and all of them from light to dark; the
    joins that can be seen, the plainest first; codes of skeins whose colour nobody noted, and of
    those whose colour runs from one into another."""

    families: tuple[tuple[Shade, ...], ...]
    joins: tuple[Join, ...]
    unknown: tuple[str, ...]
    running: tuple[str, ...]


def colours_of(book: Book, plan: Plan, seen: Picture) -> Colours:
    """The colours of the skeins promised to a plan, with the joins of its picture."""
    held = dict.fromkeys(one.holding_id for one in book.promises_of.get(plan.id, []))
    holdings = [book.holding[one] for one in held]
    shades = {one: shade for one in held if (shade := _shade(book, one))}
    running = tuple(one.code for one in holdings if one.colours)
    unknown = (one.code for one in holdings if one.id not in shades and not one.colours)
    joins = (found for piece in seen.pieces for found in _joins(piece, shades))
    plainest = sorted(dict.fromkeys(joins), key=lambda one: (-one.difference, one.part_id, one.row))
    return Colours(_families(shades.values()), tuple(plainest), tuple(unknown), running)


def _shade(book: Book, holding_id: str) -> Shade | None:
    """A skein's colour, its own or its yarn's; None where it runs or nobody noted it."""
    holding = book.holding[holding_id]
    yarn = book.yarn.get(holding.yarn_id or "")
    colour = holding.colour or (yarn.colour if yarn else "")
    if not colour or holding.colours:
        return None
    return Shade(holding_id, holding.code, holding.yarn_id, colour, lab_of(colour)[0])


def _families(shades: Iterable[Shade]) -> tuple[tuple[Shade, ...], ...]:
    """From light to dark; a skein joins a family if it reads as one with every skein of it."""
    families: list[list[Shade]] = []
    for shade in sorted(shades, key=lambda one: (-one.lightness, one.colour, one.code)):
        for family in families:
            if all(apart(shade.colour, one.colour) < READS_AS_ONE for one in family):
                family.append(shade)
                break
        else:
            families.append([shade])
    return tuple(tuple(one) for one in families)


def _joins(piece: Piece, shades: dict[str, Shade]) -> Iterator[Join]:
    for before, after in pairwise(piece.bands):
        held = {one.role: one.holding_id for one in before.knit.threads}
        for thread in after.knit.threads:
            first, then = (
                shades.get(held.get(thread.role) or ""),
                shades.get(thread.holding_id or ""),
            )
            if first and then and (far := apart(first.colour, then.colour)) >= SHOWS:
                yield Join(piece.part_id, piece.name, after.first, first, then, far)
