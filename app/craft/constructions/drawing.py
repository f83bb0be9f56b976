"""What a construction is given and what it gives back: pieces, their joins, and their outlines."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from math import floor, isfinite
from typing import Literal

Place = Literal["body", "back", "front", "sleeve", "yoke", "neck", "band", "cuff", "crown", "piece"]
Edging = Literal[
    "none",
    "cast on",
    "cast on and seams",
    "cast on and off",
    "cast on, off and seams",
    "cast on, stretchy cast-off",
    "cast off",
    "cast off and seams",
    "stretchy cast-off",
    "picked up, stretchy cast-off",
]
Reason = Literal["nothing left", "neck too wide", "too steep", "sleeve does not fit"]
Point = tuple[float, float]
"""(across, up) in cm."""


class Impossible(ValueError):
    """No such garment fits on this body: `reason` is its kind, the message says it in words."""

    def __init__(self, reason: Reason, words: str) -> None:
        super().__init__(words)
        self.reason = reason


HAIR = 1e-9


def nearest(number: float) -> int:
    """The nearest whole number, halves upwards; a hair below a half counts as one, so that inches
    and centimetres come out alike."""
    return floor(number + 0.5 + HAIR)


@dataclass(frozen=True, slots=True)
class Knit:
    """Stitches and rows in 10 cm, and the needle they were worked on in mm if known."""

    stitches: float
    rows: float
    needle_mm: float | None = None

    def across(self, cm: float) -> float:
        """Stitches in a width, not rounded."""
        return cm * self.stitches / 10

    def pairs(self, cm: float) -> int:
        """Stitches in a width as an even number, so that both halves are alike."""
        return 2 * nearest(self.across(cm) / 2)

    def along(self, cm: float, every: int = 1) -> int:
        """Rows in a length, to the nearest `every`: 2 where work ends on the wrong side."""
        return every * nearest(cm * self.rows / 10 / every)

    def wide(self, stitches: float) -> float:
        """The width of so many stitches in cm."""
        return 10 * stitches / self.stitches

    def long(self, rows: float) -> float:
        """The length of so many rows in cm."""
        return 10 * rows / self.rows


@dataclass(frozen=True, slots=True)
class Band:
    """A border: its depth in cm, its stitch pattern and the gauge it is knit to."""

    depth_cm: float
    pattern: str
    knit: Knit


@dataclass(frozen=True, slots=True)
class Wanted:
    """A body in cm by measure, ease in cm by part, the gauge, what was chosen, and the bands."""

    measures: Mapping[str, float]
    ease: Mapping[str, float]
    knit: Knit
    choices: Mapping[str, str]
    bands: Mapping[str, Band]

    def cm(self, name: str) -> float:
        """A measure with the ease of its part."""
        cm = self.measures[name] + self.ease.get(name, 0.0)
        if not (isfinite(cm) and cm > 0):
            raise Impossible("nothing left", f"{name} with its ease must be more than zero")
        return cm


@dataclass(frozen=True, slots=True)
class KnitRun:
    """`rows` rows that go evenly from `stitches` to `stitches_to`, beside an opening that goes
    evenly from `gap` to `gap_to` stitches: the neck in the middle of a front."""

    rows: int
    stitches: int
    stitches_to: int
    pattern: str = "stocking stitch"
    gap: int = 0
    gap_to: int = 0

    @property
    def worked(self) -> float:
        """Stitches worked in all its rows."""
        return self.rows * (self.stitches + self.stitches_to) / 2


@dataclass(frozen=True, slots=True)
class DrawnPiece:
    """A piece with its runs from the cast-on up; `copies` alike, the second mirrored where a piece
    is half of a front. `outline` is its fabric laid flat, in cm; work in the round is cut open.
    `rings`: its rows are half rings around the middle of its upper edge, else they lie level."""

    name: str
    place: Place
    in_round: bool
    copies: int
    runs: tuple[KnitRun, ...]
    knit: Knit
    edges: Edging
    words: tuple[str, ...]
    outline: tuple[Point, ...]
    rings: bool = False

    @property
    def rows(self) -> int:
        return sum(run.rows for run in self.runs)

    @property
    def worked(self) -> float:
        """Stitches worked in one copy."""
        return sum(run.worked for run in self.runs)


@dataclass(frozen=True, slots=True)
class Join:
    """Two edges that meet: what one has, what the other wants, and how far apart they may lie."""

    one: str
    other: str
    how: str
    has: float
    wants: float
    unit: Literal["stitches", "cm"]
    least: float
    most: float

    @property
    def holds(self) -> bool:
        """Whether the difference lies where it may, half a stitch rounded up with it."""
        return self.least - HAIR <= self.has - self.wants <= self.most + HAIR

    @property
    def words(self) -> str:
        """The join in words, with both measures."""
        places = 0 if self.unit == "stitches" else 1
        has, wants = f"{self.has:.{places}f} {self.unit}", f"{self.wants:.{places}f} {self.unit}"
        return f"{self.one.capitalize()} {self.how} {self.other}: {has} to {wants}."


@dataclass(frozen=True, slots=True)
class Across:
    """Where a measure of the body lies across a garment: those `pieces` side by side, a piece twice
    where both of a pair count, each at the end of its row `row`; `besides` are stitches of width
    that lie elsewhere, such as what front bands cover."""

    measure: str
    pieces: tuple[str, ...]
    row: int = 0
    besides: float = 0.0


@dataclass(frozen=True, slots=True)
class Along:
    """Where a length of the body, or that share of it, lies in a garment: those `pieces` one above
    the other, the first from its row `after` and the last to its row `until` (None: its end)."""

    measure: str
    pieces: tuple[str, ...]
    after: int = 0
    until: int | None = None
    share: float = 1.0


Places = tuple[Across | Along, ...]


@dataclass(frozen=True, slots=True)
class Drawing:
    """A garment: its pieces, how they meet, what the knitter is told besides, and where the
    measures it was drawn for lie in it."""

    pieces: tuple[DrawnPiece, ...]
    joins: tuple[Join, ...] = ()
    notes: tuple[str, ...] = ()
    places: Places = ()

    def piece(self, name: str) -> DrawnPiece:
        """The piece of that name; StopIteration where there is none."""
        return next(piece for piece in self.pieces if piece.name == name)


Choices = Mapping[str, tuple[str, ...]]


@dataclass(frozen=True, slots=True)
class Construction:
    """A way to make a garment. `measures` are the body's, `sizes` the garment's own with the mean
    and standard uncertainty in cm taken where nobody gave them (practice); `eases` the parts that
    take ease, `choices` the values of each choice with the usual one first, `bands` the borders by
    name with their usual depth in cm."""

    word: str
    title: str
    measures: tuple[str, ...]
    draw: Callable[[Wanted], Drawing]
    choices: Choices
    sizes: Mapping[str, tuple[float, float]]
    eases: tuple[str, ...] = ()
    bands: Mapping[str, float] | None = None
