"""How a part was described. Every way in only makes a schedule, or states an amount."""

from dataclasses import dataclass
from typing import Literal


@dataclass(frozen=True, slots=True)
class Strand:
    """A yarn working in a run: its role, the share of the stitches it takes, its ends held."""

    role: str = "main"
    share: float = 1.0
    ends: int = 1


@dataclass(frozen=True, slots=True)
class Run:
    """`rows` rows that go evenly from `stitches` on the first to `stitches_to` on the last."""

    rows: int
    stitches: int
    stitches_to: int
    pattern: str = "stocking stitch"
    needle_mm: float | None = None
    strands: tuple[Strand, ...] = (Strand(),)


@dataclass(frozen=True, slots=True)
class Runs:
    """A schedule given outright, row by row."""

    runs: tuple[Run, ...]
    way: Literal["runs"] = "runs"


@dataclass(frozen=True, slots=True)
class Counted:
    """So many stitches by so many rows."""

    stitches: int
    rows: int
    way: Literal["counted"] = "counted"


@dataclass(frozen=True, slots=True)
class Rectangle:
    """A width by a length of fabric, in mm; its stitches and rows follow from the gauge."""

    width_mm: int
    length_mm: int
    way: Literal["rectangle"] = "rectangle"


@dataclass(frozen=True, slots=True)
class Trapezoid:
    """A piece that goes evenly from one width to another over a length, in mm."""

    width_mm: int
    width_to_mm: int
    length_mm: int
    way: Literal["trapezoid"] = "trapezoid"


@dataclass(frozen=True, slots=True)
class Measured:
    """A width that goes to another over a length of fabric, in mm, with its stitch pattern and its
    yarns: its stitches and rows follow from the gauge."""

    width_mm: int
    width_to_mm: int
    length_mm: int
    pattern: str = "stocking stitch"
    strands: tuple[Strand, ...] = (Strand(),)
    way: Literal["measured"] = "measured"


@dataclass(frozen=True, slots=True)
class Stated:
    """A pattern's one stated total, in mm of yarn: somebody's estimate with a margin in it."""

    mm: int
    way: Literal["stated"] = "stated"


@dataclass(frozen=True, slots=True)
class Metres:
    """So many mm of yarn for something else: weaving, crochet, a swap."""

    mm: int
    way: Literal["metres"] = "metres"


Shape = Runs | Counted | Rectangle | Trapezoid | Measured | Stated | Metres
