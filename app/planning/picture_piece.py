"""A piece of a garment as it lies in the picture."""

from dataclasses import dataclass
from math import cos, radians, sin

from app.book.words import Place
from app.planning.picture_folded import View
from app.planning.picture_outline import Corners, Point, spans
from app.planning.picture_rows import Band


@dataclass(frozen=True, slots=True)
class Piece:
    """One copy of a part. `outline` is its fabric as it lies, in cm from the middle of its lower
    edge, `bands` its rows in the order they are knit, `fabrics` its stitch patterns with what of it
    is worked in each; `stitches` are those of the first row, the widest and the last, each
    `stitch_cm` wide. `view` is what is seen of a piece that is folded; `rings` of one whose rows
    are half rings around the middle of its upper edge. `at` is where the middle of the lower edge
    lies in the picture, in cm, `turn` how far the piece leans, in degrees."""

    part_id: str
    name: str
    copy: int
    copies: int
    place: Place
    in_round: bool
    stitches: tuple[int, int, int]
    stitch_cm: float
    outline: Corners
    bands: tuple[Band, ...] = ()
    fabrics: tuple[tuple[str, Corners], ...] = ()
    view: View = ""
    rings: bool = False
    at: Point = (0.0, 0.0)
    turn: float = 0.0

    @property
    def foremost(self) -> bool:
        """Whether this is the view in which the piece is named: all, its front, its left front."""
        return self.view not in ("right front", "back")

    @property
    def rows(self) -> int:
        return self.bands[-1].last

    @property
    def height(self) -> float:
        """From its lower edge to its upper one, in cm."""
        return max(up for _, up in self.outline)

    @property
    def width(self) -> float:
        """From its outermost left to its outermost right as it lies, in cm."""
        across = [x for x, _ in self.outline]
        return max(across) - min(across)

    @property
    def base(self) -> float:
        """Along its lower edge, as it lies, in cm."""
        return self.across(0.0)

    def across(self, up: float) -> float:
        """How wide the piece is at a height, edge to edge, in cm."""
        dust = self.height * 1e-6
        found = spans(self.outline, min(max(up, dust), self.height - dust))
        return found[-1][1] - found[0][0]

    def point(self, across: float, up: float) -> Point:
        """Where a place on the piece lies in the picture: to the right and down, in cm."""
        lean = radians(self.turn)
        x = across * cos(lean) + up * sin(lean)
        y = across * sin(lean) - up * cos(lean)
        return self.at[0] + x, self.at[1] + y

    def lies(self, corners: Corners) -> list[Point]:
        """Corners on the piece as they lie in the picture."""
        return [self.point(*one) for one in corners]
