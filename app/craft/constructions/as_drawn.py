"""What a garment measures as it was drawn, read back from its runs, beside what was asked for."""

from dataclasses import dataclass
from typing import Literal

from app.craft.constructions.drawing import (
    Across,
    Along,
    Drawing,
    DrawnPiece,
    KnitRun,
    Wanted,
    nearest,
)


@dataclass(frozen=True, slots=True)
class AsDrawn:
    """A measure of the body with its ease, as it was asked for and as it was drawn: in cm, and in
    stitches across or rows along."""

    measure: str
    asked_cm: float
    cm: float
    asked: float
    count: float
    unit: Literal["stitches", "rows"]

    @property
    def more_cm(self) -> float:
        """How much larger it was drawn, in cm; below zero for smaller."""
        return self.cm - self.asked_cm

    @property
    def more(self) -> float:
        """The same in stitches or rows."""
        return self.count - self.asked


def as_drawn(wanted: Wanted, drawing: Drawing) -> tuple[AsDrawn, ...]:
    """Every measure that has its place in a drawing. Pieces it does not have, such as a hem without
    depth, count for nothing."""
    pieces = {one.name: one for one in drawing.pieces}
    return tuple(_read(wanted, one, pieces) for one in drawing.places)


def _read(wanted: Wanted, place: Across | Along, pieces: dict[str, DrawnPiece]) -> AsDrawn:
    there = [pieces[name] for name in place.pieces if name in pieces]
    if isinstance(place, Across):
        return _across(wanted, place, there)
    return _along(wanted, place, there)


def _across(wanted: Wanted, place: Across, pieces: list[DrawnPiece]) -> AsDrawn:
    count = sum(stitches_at(one, place.row) for one in pieces) + place.besides
    asked, knit = wanted.cm(place.measure), wanted.knit
    cm = knit.wide(count)
    return AsDrawn(place.measure, asked, cm, knit.across(asked), count, "stitches")


def _along(wanted: Wanted, place: Along, pieces: list[DrawnPiece]) -> AsDrawn:
    rows = [one.rows for one in pieces]
    if place.until is not None:
        rows[-1] = place.until
    rows[0] -= place.after
    asked, knit = place.share * wanted.cm(place.measure), wanted.knit
    cm = sum(one.knit.long(count) for one, count in zip(pieces, rows, strict=True))
    return AsDrawn(place.measure, asked, cm, asked * knit.rows / 10, sum(rows), "rows")


def stitches_at(piece: DrawnPiece, row: int) -> int:
    """Stitches across a piece at the end of a row, openings with them; of row 0, at its cast-on."""
    begun = 0
    for run in piece.runs:
        if row <= begun + run.rows:
            return _within(run, row - begun)
        begun += run.rows
    raise ValueError(f"the {piece.name} has no row {row}")


def _within(run: KnitRun, row: int) -> int:
    first, last = run.stitches + run.gap, run.stitches_to + run.gap_to
    return nearest(first + (last - first) * row / run.rows)
