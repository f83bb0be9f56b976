"""A written pattern knit to another gauge than its own. Three cases, and which one is meant
decides the metres and the size:

- "stitches": the printed stitches, lengths by the tape (the commonest);
- "stitches and rows": everything as printed, and the garment comes out in another size;
- "size": counted anew, so that the garment comes out as printed.

The yarn in a stitch goes with 1/√S, S being stitches times rows in an area (Munden 1959).
"""

from dataclasses import dataclass
from math import sqrt
from typing import Literal

from app.craft.domain import positive

Case = Literal["stitches", "stitches and rows", "size"]
CASES: tuple[Case, ...] = ("stitches", "stitches and rows", "size")
USUAL: Case = "stitches"


@dataclass(frozen=True, slots=True)
class Counts:
    """Stitches and rows in 10 cm, both above zero."""

    stitches: float
    rows: float

    @property
    def area(self) -> float:
        """Stitches in a square of 10 cm."""
        return positive(self.stitches, "stitches in 10 cm") * positive(self.rows, "rows in 10 cm")

    def across_cm(self, stitches: float) -> float:
        """The width of so many stitches."""
        return 10 * stitches / positive(self.stitches, "stitches in 10 cm")

    def along_cm(self, rows: float) -> float:
        """The length of so many rows."""
        return 10 * rows / positive(self.rows, "rows in 10 cm")


@dataclass(frozen=True, slots=True)
class Printed:
    """A piece as printed: stitches it begins with, stitches at its widest or its end, rows, and
    length in cm; None for what the pattern does not say."""

    cast_on: int | None = None
    widest: int | None = None
    rows: int | None = None
    length_cm: float | None = None


@dataclass(frozen=True, slots=True)
class Recounted:
    """The same piece at the own gauge: it goes evenly from `stitches` to `stitches_to`."""

    stitches: int
    stitches_to: int
    rows: int

    @property
    def widest(self) -> int:
        return max(self.stitches, self.stitches_to)

    @property
    def narrowest(self) -> int:
        return min(self.stitches, self.stitches_to)


def yarn_factor(case: Case, printed: Counts, own: Counts) -> float:
    """What a garment takes at the own gauge, as a share of what it takes at the printed one.

    √(S_pat/S_own) for the same stitches and rows, times c_own/c_pat where lengths go by the tape;
    √(S_own/S_pat) where the size is kept. ValueError for a gauge that is not above zero.
    """
    same_counts = sqrt(printed.area / own.area)
    if case == "stitches":
        return own.rows / printed.rows * same_counts
    return same_counts if case == "stitches and rows" else 1 / same_counts


def width_factor(case: Case, printed: Counts, own: Counts) -> float:
    """The width at the own gauge, as a share of the printed one."""
    return 1.0 if case == "size" else printed.stitches / own.stitches


def recounted(case: Case, piece: Printed, printed: Counts, own: Counts) -> Recounted | None:
    """A piece at the own gauge; None where the pattern gives no stitches, or neither rows nor
    length. Shaping stays in pairs."""
    begun = piece.widest if piece.cast_on is None else piece.cast_on
    rows = _rows(case, piece, printed, own)
    if begun is None or rows is None:
        return None
    ended = begun if piece.widest is None else piece.widest
    share = own.stitches / printed.stitches if case == "size" else 1.0
    first = round(begun * share)
    ended = ended if share == 1.0 else max(0, first + 2 * round((ended - begun) * share / 2))
    return Recounted(first, ended, max(1, round(rows)))


def _rows(case: Case, piece: Printed, printed: Counts, own: Counts) -> float | None:
    """Rows by the tape at the own gauge, or as printed; each from the other where it is missing."""
    if case == "stitches and rows":
        if piece.rows is not None or piece.length_cm is None:
            return piece.rows
        return piece.length_cm * printed.rows / 10
    if piece.length_cm is not None:
        return piece.length_cm * own.rows / 10
    return None if piece.rows is None else piece.rows * own.rows / printed.rows
