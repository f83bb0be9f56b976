"""The lengths of a size at the row gauge really got, against the lengths of the wearer."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from app.book.gauge import Gauge
from app.book.words import Place
from app.craft.pattern_gauge import Recounted
from app.craft.sizes import Measured

BODY, ARM = "body length", "arm length to underarm"

CLOSE_CM = 1.0
"""A length within which a garment fits: nobody measures cloth more closely (practice)."""

TOGETHER: tuple[tuple[str, tuple[Place, ...]], ...] = (
    (BODY, ("body", "yoke")),
    (BODY, ("back",)),
    (ARM, ("sleeve", "yoke")),
)
"""What is measured against what: a body and its yoke, or a back; a sleeve that ends at a yoke."""


@dataclass(frozen=True, slots=True)
class PieceAsKnit:
    """A piece at the own gauge, where it lies, and the length in cm it comes to."""

    name: str
    place: Place
    copies: int
    count: Recounted
    length_cm: float


@dataclass(frozen=True, slots=True)
class LengthFit:
    """A length of the body, what the garment comes to there in cm, and the piece that can be knit
    longer or shorter: `rows` bring it to the body's length, `knit_cm` of that piece."""

    place: str
    body: Measured
    garment_cm: float
    piece: str
    rows: int
    knit_cm: float

    @property
    def longer_cm(self) -> float:
        """How much longer than the body, below zero where shorter; 0 where it fits closely, or
        as closely as an unmeasured body is known."""
        off = self.garment_cm - self.body.cm
        return off if abs(off) > max(CLOSE_CM, self.body.u) else 0.0


def length_fits(
    pieces: Sequence[PieceAsKnit], known: Mapping[str, Measured], own: Gauge
) -> tuple[LengthFit, ...]:
    """Each length of the body that a size tells of. A sleeve is measured to the underarm, so only
    one that ends at a yoke is told, and nothing of a body that is not known."""
    by_place: dict[Place, PieceAsKnit] = {}
    for one in pieces:
        by_place.setdefault(one.place, one)
    found = []
    for measure, places in TOGETHER:
        if measure in known and all(one in by_place for one in places):
            found.append(_fit(measure, known[measure], [by_place[one] for one in places], own))
    return tuple(found)


def _fit(measure: str, body: Measured, pieces: list[PieceAsKnit], own: Gauge) -> LengthFit:
    """The first piece gives the length; an arm is measured without the yoke."""
    piece = pieces[0]
    counted = pieces[:1] if measure == ARM else pieces
    whole = sum(one.length_cm for one in counted)
    knit_cm = max(0.0, piece.length_cm + body.cm - whole)
    return LengthFit(measure, body, whole, piece.name, round(knit_cm * own.rows / 10), knit_cm)
