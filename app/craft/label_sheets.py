"""Sheets of labels by their measurements in mm, as they are commonly sold or cut from plain paper.

Common practice: the sizes are those in which sheets of so many labels are usual on A4 and on US
Letter. To be measured against one's own sheet; a new one is a line more in SHEETS.
"""

from dataclasses import dataclass
from typing import Literal

Paper = Literal["A4", "Letter"]

PAPERS: dict[Paper, tuple[float, float]] = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}
"""Width and height in mm (ISO 216; ANSI/ASME Y14.1, size A)."""

PADDING_MM = 2.0
QUIET_SHARE = 0.45
"""The most of a label's width that its QR code may take."""

MOST_QR_MM = 32.0
LEAST_PT, MOST_PT = 6.5, 11.0
LINES = 8
PT_MM = 25.4 / 72
LEADING = 1.22


@dataclass(frozen=True, slots=True)
class LabelSheet:
    """`left_mm` and `top_mm` to the first label; `across_mm` and `down_mm` from one label to the
    next; `cut` where it is plain paper, to be cut along the lines."""

    key: str
    paper: Paper
    columns: int
    rows: int
    width_mm: float
    height_mm: float
    left_mm: float
    top_mm: float
    across_mm: float
    down_mm: float
    cut: bool = False

    @property
    def count(self) -> int:
        """Labels on a sheet."""
        return self.columns * self.rows

    @property
    def name(self) -> str:
        """ "A4: 24 labels of 63.5 × 33.9 mm, 3 × 8" """
        size = f"{_plain(self.width_mm)} × {_plain(self.height_mm)} mm"
        what = f"{self.count} {'tags' if self.cut else 'labels'} of {size}"
        return f"{self.paper}: {what}, {'plain paper, to cut' if self.cut else self._grid}"

    @property
    def paper_mm(self) -> tuple[float, float]:
        """Width and height of the paper."""
        return PAPERS[self.paper]

    @property
    def qr_mm(self) -> float:
        """Side of the QR code, its quiet zone included: as large as there is room for."""
        room = min(self.height_mm - 2 * PADDING_MM, QUIET_SHARE * self.width_mm, MOST_QR_MM)
        return round(room, 1)

    @property
    def text_pt(self) -> float:
        """Size of the type at which LINES lines fill the height, one less on the lowest labels."""
        size = (self.height_mm - 2 * PADDING_MM) / (LINES * PT_MM * LEADING)
        return round(min(MOST_PT, max(LEAST_PT, size)), 1)

    @property
    def _grid(self) -> str:
        return f"{self.columns} × {self.rows}"


def _plain(mm: float) -> str:
    return f"{mm:.1f}".removesuffix(".0")


SHEETS: tuple[LabelSheet, ...] = (
    LabelSheet("a4-24", "A4", 3, 8, 63.5, 33.9, 7.25, 12.9, 66.0, 33.9),
    LabelSheet("a4-24-wide", "A4", 3, 8, 70.0, 37.0, 0.0, 0.5, 70.0, 37.0),
    LabelSheet("a4-21", "A4", 3, 7, 63.5, 38.1, 7.25, 15.15, 66.0, 38.1),
    LabelSheet("a4-14", "A4", 2, 7, 99.1, 38.1, 4.65, 15.15, 101.6, 38.1),
    LabelSheet("a4-8", "A4", 2, 4, 99.1, 67.7, 4.65, 13.1, 101.6, 67.7),
    LabelSheet("a4-tags", "A4", 2, 5, 85.0, 50.0, 20.0, 23.5, 85.0, 50.0, cut=True),
    LabelSheet("letter-30", "Letter", 3, 10, 66.7, 25.4, 4.7, 12.7, 69.9, 25.4),
    LabelSheet("letter-14", "Letter", 2, 7, 101.6, 33.9, 4.0, 21.05, 106.4, 33.9),
    LabelSheet("letter-10", "Letter", 2, 5, 101.6, 50.8, 4.0, 12.7, 106.4, 50.8),
    LabelSheet("letter-6", "Letter", 2, 3, 101.6, 84.7, 4.0, 12.65, 106.4, 84.7),
    LabelSheet("letter-tags", "Letter", 2, 5, 85.0, 50.0, 22.95, 14.7, 85.0, 50.0, cut=True),
)


def sheet_of(key: str) -> LabelSheet | None:
    """The sheet of this key; None where there is none."""
    return next((one for one in SHEETS if one.key == key), None)


def usual_sheet(paper: str) -> LabelSheet:
    """The first sheet of a paper; of A4 where there is none."""
    return next((one for one in SHEETS if one.paper == paper), SHEETS[0])
