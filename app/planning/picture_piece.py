"""A piece of a garment as it lies in the picture."""

from collections.abc import Iterable
from dataclasses import dataclass
from math import cos, radians, sin

from app.book.words import Place
from app.planning.picture_rows import Band


@dataclass(frozen=True, slots=True)
class Piece:
    """One copy of a part. `bands` are in the order they are knit, `stitches` those of the
    first row, the widest and the last; `at` is where the middle of its lower edge lies and `turn`
    how far it leans, in cm and degrees."""

    part_id: str
    name: str
    copy: int
    copies: int
    place: Place
    in_round: bool
    bands: tuple[Band, ...]
    stitches: tuple[int, int, int] = (0, 0, 0)
    at: tuple[float, float] = (0.0, 0.0)
    turn: float = 0.0

    @property
    def _edge(self) -> list[tuple[float, float]]:
        return [each for band in self.bands for each in band.edge]

    @property
    def height(self) -> float:
        """From its lower edge to its upper one, in cm."""
        return max(up for up, _ in self._edge)

    @property
    def width(self) -> float:
        """At its widest, as it lies, in cm."""
        return max(wide for _, wide in self._edge)

    @property
    def base(self) -> float:
        """Along its lower edge, as it lies, in cm."""
        return min(self._edge)[1]

    @property
    def rows(self) -> int:
        return self.bands[-1].last

    @property
    def widths(self) -> tuple[float, float, float]:
        """Of its first row, at its widest and of its last row, in cm; of a tube, all around."""
        first, last = self.bands[0].edge[0][1], self.bands[-1].edge[-1][1]
        around = 2 if self.in_round else 1
        return around * first, around * self.width, around * last

    def point(self, across: float, up: float) -> tuple[float, float]:
        """Where a place on the piece lies in the picture: so far from its middle, so far up."""
        lean = radians(self.turn)
        x = across * cos(lean) + up * sin(lean)
        y = across * sin(lean) - up * cos(lean)
        return self.at[0] + x, self.at[1] + y

    def corners(self, band: Band) -> list[tuple[float, float]]:
        """The outline of a band in the picture: up its right side, down its left one."""
        return self._around(band.edge)

    def outline(self) -> list[tuple[float, float]]:
        """The outline of the whole piece in the picture."""
        return self._around(self.profile())

    def profile(self) -> list[tuple[float, float]]:
        """Height and width of the piece where its side bends, in cm, from its lower edge up."""
        knit_up = self._edge[0][0] < self._edge[-1][0]
        edge = list(dict.fromkeys(self._edge if knit_up else reversed(self._edge)))
        bends = edge[:1]
        for before, at, after in zip(edge, edge[1:], edge[2:], strict=False):
            if not _straight(before, at, after):
                bends.append(at)
        return bends + edge[1:][-1:]

    def _around(self, edge: Iterable[tuple[float, float]]) -> list[tuple[float, float]]:
        sides = list(edge)
        right = [self.point(wide / 2, up) for up, wide in sides]
        return right + [self.point(-wide / 2, up) for up, wide in reversed(sides)]


def _straight(
    before: tuple[float, float], at: tuple[float, float], after: tuple[float, float]
) -> bool:
    """Whether a side goes on as it did: three points on one line, but for dust."""
    rise, run = at[0] - before[0], at[1] - before[1]
    return abs((after[0] - at[0]) * run - (after[1] - at[1]) * rise) < 1e-9
