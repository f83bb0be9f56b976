"""The way of wool as a picture: blocks in columns, bands between them as wide as their grams."""

from collections.abc import Sequence
from dataclasses import dataclass

from app.book.book import Book
from app.planning.trace_layers import Layers, Node
from app.planning.trace_streams import Stream
from app.web.pages.wool_name import wool_name
from app.web.shown import Shown

STEP, BLOCK = 116.0, 10.0
"""From one column to the next, and the width of a block, in units of the picture."""

HIGH = 190.0
"""Height that the fullest column's grams are drawn in."""

GAP = 28.0
"""Between two blocks of a column: room for two lines of words."""

LEAST = 1.5
LONGEST_WORD = 15
SHORTER = {"weighing and moisture": "weighing"}
USUAL_COLOUR = "#b8a88f"
WASTE_COLOUR = "#8a8a8a"


@dataclass(frozen=True, slots=True)
class Block:
    """A holding as drawn, or several, with its words."""

    x: float
    y: float
    height: float
    colour: str
    name: str
    grams: str


@dataclass(frozen=True, slots=True)
class Ribbon:
    """A stream as drawn: the outline of its band."""

    path: str
    colour: str


@dataclass(frozen=True, slots=True)
class Way:
    """The picture with its size, and each stream in words."""

    blocks: tuple[Block, ...]
    ribbons: tuple[Ribbon, ...]
    width: float
    height: float
    words: tuple[str, ...]


def way_picture(streams: Sequence[Stream], laid: Layers, book: Book, shown: Shown) -> Way | None:
    """The picture of some streams; None where nothing flowed."""
    if not laid.bands:
        return None
    per_mg = HIGH / max(_full(laid, column) for column in range(laid.columns))
    tops = _tops(laid, per_mg)
    blocks = tuple(
        _block(one, tops[place], per_mg, book, shown) for place, one in enumerate(laid.nodes)
    )
    return Way(
        blocks=blocks,
        ribbons=_ribbons(laid, blocks, per_mg),
        width=(laid.columns - 1) * STEP + BLOCK + 90,
        height=max(one.y + max(one.height, GAP) for one in blocks) + 4,
        words=tuple(_said(one, book, shown) for one in sorted(streams, key=lambda one: one.came)),
    )


def _full(laid: Layers, column: int) -> float:
    return sum(one.mg for one in laid.nodes if one.column == column)


def _tops(laid: Layers, per_mg: float) -> list[float]:
    tops, below = [], dict.fromkeys(range(laid.columns), 2.0)
    for one in laid.nodes:
        tops.append(below[one.column])
        below[one.column] += max(LEAST, one.mg * per_mg, 0.0) + GAP
    return tops


def _block(node: Node, top: float, per_mg: float, book: Book, shown: Shown) -> Block:
    return Block(
        x=node.column * STEP,
        y=round(top, 1),
        height=round(max(LEAST, node.mg * per_mg), 1),
        colour=_colour(node.holdings[0], book),
        name=_short(_name(node, book)),
        grams=shown.mass(node.mg / 1000),
    )


def _ribbons(laid: Layers, blocks: Sequence[Block], per_mg: float) -> tuple[Ribbon, ...]:
    out = {place: one.y for place, one in enumerate(blocks)}
    into = dict(out)
    found = []
    for band in laid.bands:
        wide = max(0.6, band.mg * per_mg)
        source, target = blocks[band.source], blocks[band.target]
        path = _band(source.x + BLOCK, out[band.source], target.x, into[band.target], wide)
        found.append(Ribbon(path, source.colour))
        out[band.source] += band.mg * per_mg
        into[band.target] += band.mg * per_mg
    return tuple(found)


def _band(x1: float, y1: float, x2: float, y2: float, wide: float) -> str:
    bend = (x1 + x2) / 2
    there = f"M{x1:.1f} {y1:.1f}C{bend:.1f} {y1:.1f} {bend:.1f} {y2:.1f} {x2:.1f} {y2:.1f}"
    back = f"V{y2 + wide:.1f}C{bend:.1f} {y2 + wide:.1f} {bend:.1f} {y1 + wide:.1f}"
    return f"{there}{back} {x1:.1f} {y1 + wide:.1f}Z"


def _colour(holding_id: str, book: Book) -> str:
    holding = book.holding.get(holding_id)
    if holding is None or holding.kind in ("waste", "weighing and moisture", "given away"):
        return WASTE_COLOUR
    yarn = book.yarn.get(holding.yarn_id or "")
    fleece = book.fleece.get(holding.fleece_id or "")
    named = (holding.colour, yarn.colour if yarn else "", fleece.colour if fleece else "")
    return next((one for one in named if one), USUAL_COLOUR)


def _name(node: Node, book: Book) -> str:
    if len(node.holdings) > 1:
        return f"{len(node.holdings)} others"
    return _code(node.holdings[0], book)


def _code(holding_id: str, book: Book) -> str:
    holding = book.holding.get(holding_id)
    return wool_name(book, holding) if holding else holding_id


def _short(name: str) -> str:
    """A name that fits its column: of a part of a fleece, "Bramble, combed", what tells it from the
    others."""
    name = name if len(name) <= LONGEST_WORD else SHORTER.get(name, name.split(", ")[-1])
    return name if len(name) <= LONGEST_WORD else f"{name[: LONGEST_WORD - 1]}…"


def _said(one: Stream, book: Book, shown: Shown) -> str:
    """ "Bramble → G-001: 310 g" """
    return f"{_code(one.source, book)} → {_code(one.target, book)}: {shown.mass(one.mg / 1000)}"
