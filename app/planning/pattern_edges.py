"""How the parts of a written pattern's size meet: what is cast on and off, what is knit on."""

import re

from app.book.pattern import SizePart
from app.book.plan import Part
from app.book.shape import Stated
from app.book.words import Edges, Place
from app.craft.constructions.pieces import edging
from app.planning.places import TUBES, place_of

PICKED_UP: frozenset[Place] = frozenset({"neck", "band"})

HEM = re.compile(r"\b(hems?|welts?|brims?)\b", re.IGNORECASE)
"""Bands that are cast on, and the piece above is knit on from them."""

TRUNK: frozenset[Place] = frozenset({"body", "back", "front"})


def place_in(one: SizePart) -> Place:
    """Where a part of a size lies: as the pattern says, else as its name tells."""
    return place_of(Part("", "", one.name, Stated(1), place=one.place))


def is_tube(one: SizePart, parts: tuple[SizePart, ...]) -> bool:
    """Whether a part of a size is worked in the round; a hem is as the body above it."""
    return "body" in _places(parts) if _is_hem(one) else place_in(one) in TUBES


def edges_in(one: SizePart, parts: tuple[SizePart, ...]) -> Edges:
    """What of a part is cast on and off, and whether it is sewn: not where it is knit on from
    another of `parts`, or goes on into it."""
    if place_in(one) in PICKED_UP and not _is_hem(one):
        return "picked up and cast off"
    begun, ended = _knit_on(one, parts)
    return edging(cast_on=not begun, cast_off=not ended, sewn=not is_tube(one, parts))


def _knit_on(one: SizePart, parts: tuple[SizePart, ...]) -> tuple[bool, bool]:
    """Whether a part begins with the stitches of others, and whether its last go on into others;
    where the yoke is knit first, it is the other way round."""
    place, places, down = place_in(one), _places(parts), _from_the_neck(parts)
    if place == "yoke":
        joined = bool(places & {"body", "sleeve"})
        return joined and not down, joined and down
    if place == "crown":
        return "body" in places, True
    below, above = _below(one, parts), _above(one, places)
    return (True, below) if down and above and place in ("body", "sleeve") else (below, above)


def _below(one: SizePart, parts: tuple[SizePart, ...]) -> bool:
    """Whether there is a hem or a cuff below it."""
    if place_in(one) in TRUNK:
        return any(_is_hem(each) for each in parts)
    return place_in(one) == "sleeve" and "cuff" in _places(parts)


def _above(one: SizePart, places: set[Place]) -> bool:
    """Whether something is knit on above it."""
    if _is_hem(one):
        return bool(places & TRUNK)
    over: dict[Place, set[Place]] = {
        "body": {"yoke", "crown"},
        "sleeve": {"yoke"},
        "cuff": {"sleeve"},
    }
    return bool(over.get(place_in(one), set()) & places)


def _from_the_neck(parts: tuple[SizePart, ...]) -> bool:
    """Whether the yoke widens as it is knit."""
    yokes = [one for one in parts if place_in(one) == "yoke"]
    return any((one.widest or 0) > (one.cast_on or 0) for one in yokes)


def _is_hem(one: SizePart) -> bool:
    return place_in(one) in ("band", "piece") and HEM.search(one.name) is not None


def _places(parts: tuple[SizePart, ...]) -> set[Place]:
    return {place_in(one) for one in parts}
