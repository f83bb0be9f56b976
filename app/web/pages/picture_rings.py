"""A shawl that is knit from the middle of its upper edge outwards: its rows are half rings."""

from dataclasses import dataclass

from app.planning.picture_piece import Piece
from app.planning.picture_rows import Band
from app.web.pages.picture_room import Point


@dataclass(frozen=True, slots=True)
class Rings:
    """Half rings below a middle, `wide` and `high` at the outermost of them, which is `far` cm
    from where the work began."""

    middle: Point
    wide: float
    high: float
    far: float

    def band(self, band: Band) -> str:
        """The path around the rows of a band."""
        x, y = self.middle
        begun = band.begun * self.wide / self.far
        inner = f"L{x + begun:.1f} {y:.1f}{self._arc(band.begun, 1)}Z" if begun else "Z"
        return self.row(band.ended) + inner

    def row(self, at: float) -> str:
        """The path along a row that lies so many cm from the middle."""
        x, y = self.middle
        return f"M{x - at * self.wide / self.far:.1f} {y:.1f}{self._arc(at, -1)}"

    def lowest(self, at: float) -> Point:
        """The lowest point of that row."""
        return self.middle[0], self.middle[1] + at * self.high / self.far

    def _arc(self, at: float, side: int) -> str:
        """Along a row to its right end, or with a side of 1 back to its left one."""
        across, down = at * self.wide / self.far, at * self.high / self.far
        end = self.middle[0] - side * across
        return f"A{across:.1f} {down:.1f} 0 0 {int(side > 0)} {end:.1f} {self.middle[1]:.1f}"


def rings_of(piece: Piece, middle: Point, scale: float) -> Rings:
    """The rings of a piece whose middle lies there in the drawing."""
    return Rings(middle, piece.width / 2 * scale, piece.height * scale, piece.height)
