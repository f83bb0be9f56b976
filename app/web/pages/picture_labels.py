"""The words in a picture: captions beside the pieces, tags on them, wherever there is room."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from app.book.words import Place
from app.web.pages.picture_room import Box, Corners, Point, Room

LETTER, LINE = 5.5, 13.0
"""Width of a letter and height of a line of words, on the safe side."""

TAG_LETTER, TAG_HIGH, TAG_LONGEST = 5.5, 12.0, 16
"""The same of a tag, and how many letters it has at most."""

OVERHANG = 4.0
"""How far a tag may reach over the edges of its piece."""

ABOVE_FIRST: tuple[Place, ...] = ("yoke", "crown", "neck")
"""Places whose words stand above them if they can; the others' stand below."""

Bounds = tuple[float, float, float, float]
"""Left, top, right and bottom."""


@dataclass(frozen=True, slots=True)
class Words:
    """Lines of words around a middle; a tag lies on a piece, on ground of its own."""

    box: Box
    lines: tuple[str, ...]

    @property
    def places(self) -> list[tuple[float, str]]:
        """The baseline of each line."""
        top = self.box.y - LINE * len(self.lines) / 2
        return [(round(top + LINE * (at + 0.76), 1), line) for at, line in enumerate(self.lines)]


def caption(
    lines: tuple[str, ...], pieces: list[Corners], place: Place, room: Room
) -> Words | None:
    """The words of a part beside one of its pieces, or close by; None where there is no room."""
    wide, high = LETTER * max(map(len, lines)) + 4, LINE * len(lines) + 2
    whole = bounds_of([point for one in pieces for point in one])
    each = [bounds_of(one) for one in pieces]
    apart = any(one[0] > before[2] + wide / 2 for before, one in pairwise(each))
    wanted = list(_around(each if apart else [whole], each, wide, high))
    if place in ABOVE_FIRST:
        wanted.sort(key=lambda one: one.y > whole[1])
    box = room.place(wanted) or room.near(_middle(whole, wide, high), whole)
    return Words(box, lines) if box else None


def tag(name: str, at: Point, room: Room) -> Words | None:
    """A tag around a place on a piece; None where another lies there."""
    box = room.place([Box(*at, tag_wide(name), TAG_HIGH)], on_pieces=True)
    return Words(box, (name,)) if box else None


def tag_at_end(name: str, ends: list[Point], room: Room) -> Words | None:
    """A tag above a line, or else below it, at its right end or its left."""
    (left, y), (right, _) = ends
    wide = tag_wide(name)
    middles = (right - wide / 2 - 6, left + wide / 2 + 6)
    sides = (y - TAG_HIGH / 2 - 2, y + TAG_HIGH / 2 + 2)
    wanted = [Box(x, up, wide, TAG_HIGH) for up in sides for x in middles]
    box = room.place(wanted, on_pieces=True)
    return Words(box, (name,)) if box else None


def tag_wide(name: str) -> float:
    """How wide a tag of these letters is."""
    return TAG_LETTER * len(name) + 6


def short(name: str) -> str:
    """A name that a tag can hold."""
    return name if len(name) <= TAG_LONGEST else f"{name[: TAG_LONGEST - 1]}…"


def bounds_of(points: Corners) -> Bounds:
    across, down = [x for x, _ in points], [y for _, y in points]
    return min(across), min(down), max(across), max(down)


def _around(hosts: list[Bounds], each: list[Bounds], wide: float, high: float) -> Iterator[Box]:
    """Where words may stand: below, beside, above."""
    for left, _, right, bottom in hosts:
        for drop in (3.0, 15.0, 27.0, 39.0, 51.0, 63.0):
            yield Box((left + right) / 2, bottom + drop + high / 2, wide, high)
    for left, top, right, bottom in each:
        for y in (top + high / 2, (top + bottom) / 2):
            yield Box(right + 4 + wide / 2, y, wide, high)
            yield Box(left - 4 - wide / 2, y, wide, high)
    for left, top, right, _ in hosts:
        yield Box((left + right) / 2, top - 3 - high / 2, wide, high)


def _middle(bounds: Bounds, wide: float, high: float) -> Box:
    left, top, right, bottom = bounds
    return Box((left + right) / 2, (top + bottom) / 2, wide, high)
