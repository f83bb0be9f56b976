"""The colours of a garment's skeins: which read as one, from light to dark, and where a change of
skein would show."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise

from app.book.book import Book
from app.book.plan import Plan
from app.craft.colour import Lab, difference, lab
from app.planning.needs import meant_yarn
from app.planning.picture import Picture
from app.planning.picture_piece import Piece
from app.planning.yarns import Lots

READS_AS_ONE = 2.0
"""Below this CIEDE2000 difference two skeins are told apart only on close look, side by side
(practice of textile dyers)."""

SHOWS = 1.0
"""From this difference on a change of skein can be seen at all."""

ALIKE_GRIST = 0.10
"""Yarns whose grist differs by more than a tenth do not pass for one in a fabric (practice)."""


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


def apart(one: str, other: str) -> float:
    """CIEDE2000 between two colours "#rrggbb"."""
    return 0.0 if one == other else difference(_lab(one), _lab(other))


def mixtures(book: Book, plan: Plan) -> tuple[tuple[str, ...], ...]:
    """Yarns that read as one colour with a yarn of the plan, of the same fibre and about its grist:
    ids, that yarn's own first. They may be offered to be knit as if they were one."""
    found, lots = [], Lots(book)
    for own in _yarns_of(book, plan):
        alike = [one.id for one in book.yarns if one.id != own and _pass_for_one(lots, own, one.id)]
        if alike:
            found.append((own, *alike))
    return tuple(found)


def _yarns_of(book: Book, plan: Plan) -> dict[str, None]:
    roles = (meant_yarn(plan, part, "main") for part in book.parts_of.get(plan.id, []))
    return dict.fromkeys(
        one for one in (*(yarn.yarn_id for yarn in plan.yarns), *roles) if one is not None
    )


def _pass_for_one(lots: Lots, one_id: str, other_id: str) -> bool:
    one, other = lots.book.yarn[one_id], lots.book.yarn[other_id]
    if not one.colour or not other.colour or one.fibre.casefold() != other.fibre.casefold():
        return False
    a, b = lots.tex(one_id), lots.tex(other_id)
    if a is None or b is None or abs(a.value - b.value) > ALIKE_GRIST * a.value:
        return False
    return apart(one.colour, other.colour) < READS_AS_ONE


def _shade(book: Book, holding_id: str) -> Shade | None:
    """A skein's colour, its own or its yarn's; None where it runs or nobody noted it."""
    holding = book.holding[holding_id]
    yarn = book.yarn.get(holding.yarn_id or "")
    colour = holding.colour or (yarn.colour if yarn else "")
    if not colour or holding.colours:
        return None
    return Shade(holding_id, holding.code, holding.yarn_id, colour, _lab(colour)[0])


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


@lru_cache(maxsize=1024)
def _lab(colour: str) -> Lab:
    return lab(colour)
