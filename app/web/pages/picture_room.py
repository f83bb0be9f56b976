"""Room for words in a picture: boxes that lie neither on a piece nor on each other."""

from collections.abc import Iterable
from dataclasses import dataclass, field
from math import hypot

NEAR, STEP = 10.0, 12.0
"""How far off words may still stand from what they are about, and how finely room is sought."""

Point = tuple[float, float]
Corners = list[Point]


@dataclass(frozen=True, slots=True)
class Box:
    """A box around its middle."""

    x: float
    y: float
    wide: float
    high: float

    @property
    def corners(self) -> Corners:
        left, right = self.x - self.wide / 2, self.x + self.wide / 2
        top, bottom = self.y - self.high / 2, self.y + self.high / 2
        return [(left, top), (right, top), (right, bottom), (left, bottom)]

    def meets(self, other: "Box") -> bool:
        """Whether two boxes overlap."""
        near_x = abs(self.x - other.x) < (self.wide + other.wide) / 2
        return near_x and abs(self.y - other.y) < (self.high + other.high) / 2


@dataclass(slots=True)
class Room:
    """What is taken already, between a left and a right edge."""

    left: float
    right: float
    pieces: list[tuple[Box, Corners]] = field(default_factory=list)
    boxes: list[Box] = field(default_factory=list)

    def fill(self, corners: Corners) -> None:
        """Take a piece's convex part."""
        self.pieces.append((_around(corners), corners))

    def place(self, wanted: Iterable[Box], on_pieces: bool = False) -> Box | None:
        """Take the first of the boxes for which there is room, moved in from the edges."""
        for one in wanted:
            inward = self._inward(one)
            if inward and self._is_free(inward, on_pieces):
                self.boxes.append(inward)
                return inward
        return None

    def near(self, box: Box, bounds: tuple[float, float, float, float]) -> Box | None:
        """Take whatever room there is close by something within those bounds, the nearest first."""
        left, top, right, bottom = bounds
        wide, high = box.wide / 2 + NEAR, box.high / 2 + NEAR
        places = [
            Box(x, y, box.wide, box.high)
            for x in _steps(left - wide, right + wide)
            for y in _steps(top - high, bottom + high)
        ]
        places.sort(key=lambda one: hypot(one.x - box.x, one.y - box.y))
        return self.place(places)

    def _inward(self, box: Box) -> Box | None:
        if box.wide > self.right - self.left:
            return None
        least, most = self.left + box.wide / 2, self.right - box.wide / 2
        return Box(min(max(box.x, least), most), box.y, box.wide, box.high)

    def _is_free(self, box: Box, on_pieces: bool) -> bool:
        if any(box.meets(other) for other in self.boxes):
            return False
        near = (corners for around, corners in self.pieces if box.meets(around))
        return on_pieces or not any(overlap(box.corners, one) for one in near)


def _around(corners: Corners) -> Box:
    across, down = [x for x, _ in corners], [y for _, y in corners]
    wide, high = max(across) - min(across), max(down) - min(down)
    return Box(min(across) + wide / 2, min(down) + high / 2, wide, high)


def _steps(least: float, most: float) -> list[float]:
    return [least + STEP * at for at in range(int((most - least) / STEP) + 1)]


def overlap(one: Corners, other: Corners) -> bool:
    """Whether two convex outlines overlap: no side of either keeps them apart."""
    return not any(_apart(side, one, other) for shape in (one, other) for side in _sides(shape))


def _sides(corners: Corners) -> list[Point]:
    """For each side, the direction across it."""
    after = corners[1:] + corners[:1]
    return [(b[1] - a[1], a[0] - b[0]) for a, b in zip(corners, after, strict=True) if a != b]


def _apart(across: Point, one: Corners, other: Corners) -> bool:
    first = [x * across[0] + y * across[1] for x, y in one]
    second = [x * across[0] + y * across[1] for x, y in other]
    return max(first) <= min(second) or max(second) <= min(first)
