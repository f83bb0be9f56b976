"""Which pieces were drawn to meet which, and by what: change one, and the other no longer fits.

By the names the constructions here give their pieces; a piece with another name meets nothing.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from app.craft.constructions.drawing import Across, Drawing, DrawnPiece

By = Literal["rows", "stitches", "rows above the arms", "stitches above the arms"]


@dataclass(frozen=True, slots=True)
class Meet:
    """A piece that another was drawn to meet by that."""

    piece: str
    by: By


def _all(by: By, *pieces: str) -> tuple[Meet, ...]:
    return tuple(Meet(one, by) for one in pieces)


TRUNK = ("back", "front", "fronts")
FLAT_NECK = (*_all("rows above the arms", *TRUNK), *_all("stitches above the arms", *TRUNK))
ARMHOLE = (
    *_all("rows above the arms", *TRUNK),
    *_all("stitches above the arms", "back"),
)

MEETS: Mapping[str, tuple[Meet, ...]] = {
    "hem": _all("stitches", "body"),
    "back hem": _all("stitches", "back"),
    "front hems": _all("stitches", "fronts"),
    "back and front hems": _all("stitches", "back", "front"),
    "cuffs": _all("stitches", "sleeves", "hands", "legs"),
    "brim": _all("stitches", "sides"),
    "crown": _all("stitches", "sides"),
    "back": _all("rows", "front", "fronts"),
    "front": _all("rows", "back"),
    "fronts": _all("rows", "back"),
    "sleeves": ARMHOLE,
    "armhole bands": ARMHOLE,
    "yoke": _all("stitches", "body", "sleeves"),
    "front bands": _all("rows", "fronts", "front hems", "body", "hem", "yoke"),
    "neck band": (
        *FLAT_NECK,
        *_all("rows", "yoke", "front bands"),
        *_all("stitches", "yoke"),
    ),
    "border": (*_all("rows", "middle"), *_all("stitches", "middle")),
    "thumbs": _all("stitches", "hands"),
    "heels": _all("stitches", "legs"),
    "feet": (*_all("stitches", "heels"), *_all("rows", "heels")),
    "toes": _all("stitches", "feet"),
}
"""A neck band meets the tops of front bands, which are as deep as these have rows; a sleeve in one
piece with its yoke meets no armhole."""


def meets(drawing: Drawing, piece: DrawnPiece) -> tuple[Meet, ...]:
    """What a piece was drawn to meet of what is there; a hem of its own gauge or a collar that the
    maker added meets nothing."""
    there = {one.name for one in drawing.pieces}
    return tuple(one for one in MEETS.get(piece.name, ()) if one.piece in there)


def underarm_row(drawing: Drawing, name: str) -> int:
    """The row of a piece at the underarm, where its chest lies; 0 for a piece that has none."""
    for one in drawing.places:
        if isinstance(one, Across) and one.measure == "chest" and name in one.pieces:
            return one.row
    return 0
