"""What a picture is drawn of: outlines, fills, lines and words, in units of the drawing."""

from dataclasses import dataclass, field

from app.web.pages.picture_labels import Words
from app.web.pages.picture_words import PieceWords

WIDE = 360.0
"""Width of the drawing: a unit is a pixel of the narrowest phone."""


@dataclass(frozen=True, slots=True)
class Shape:
    """An outline to fill; `pale` for rows to come while the rest is knit, `round` for a path that
    goes round instead of from point to point."""

    points: str
    fill: str
    pale: bool = False
    round: bool = False


@dataclass(frozen=True, slots=True)
class Fleck:
    """A fill of several yarns in one row: name, ground colour, and the rest as (colour, x, width)
    of a tile 10 wide."""

    name: str
    ground: str
    flecks: tuple[tuple[str, float, float], ...]


@dataclass(frozen=True, slots=True)
class Hatch:
    """A fill of rows that have no skein yet, over the colour of the yarn meant for them; the rest
    of several yarns as (colour, y, height) of a tile 6 high."""

    name: str
    colour: str
    others: tuple[tuple[str, float, float], ...] = ()


@dataclass(frozen=True, slots=True)
class Fabric:
    """A part of a piece with the look of its stitch pattern: the name of a fill of the drawing."""

    points: str
    look: str


@dataclass(frozen=True, slots=True)
class Stroke:
    """A line across a piece; `knit_to` where what is knit ends, else a join."""

    path: str
    knit_to: bool = False


@dataclass(slots=True)
class Drawing:
    """The whole picture; `top` and `height` are of its viewBox, `WIDE` its width."""

    title: str
    sentence: str
    words: tuple[PieceWords, ...]
    amounts: tuple[str, ...]
    without_gauge: tuple[str, ...]
    pale: bool
    finished: bool
    tubes: bool
    folded: bool
    outlines: list[str] = field(default_factory=list)
    shapes: list[Shape] = field(default_factory=list)
    flecks: list[Fleck] = field(default_factory=list)
    strokes: list[Stroke] = field(default_factory=list)
    tags: list[Words] = field(default_factory=list)
    captions: list[Words] = field(default_factory=list)
    hatches: list[Hatch] = field(default_factory=list)
    fabrics: list[Fabric] = field(default_factory=list)
    top: float = 0.0
    height: float = 0.0
    width: float = WIDE

    @property
    def looks(self) -> list[str]:
        """The stitch patterns that are seen."""
        return sorted({one.look for one in self.fabrics})

    @property
    def joined(self) -> bool:
        return any(not one.knit_to for one in self.strokes)
