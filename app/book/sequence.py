"""A sequence: rows of a part that are knit in more than one yarn, turn and turn about."""

from dataclasses import dataclass

from app.book.words import SequenceKind


@dataclass(frozen=True, slots=True)
class SequenceYarn:
    """`share` of the rows at the beginning and `share_to` at the end, each between 0 and 1, are
    knit in the yarn of `role`."""

    role: str
    share: float
    share_to: float


@dataclass(frozen=True, slots=True)
class Band:
    """So many rows of a stripe in the yarn of `role`."""

    role: str
    rows: int


@dataclass(frozen=True, slots=True)
class Sequence:
    """From `from_row` to `to_row` (None: the last), others knit in turn what `role` would knit.

    `yarns` take turns by their shares; for stripes `bands` follow each other again and again. The
    yarn changes only after `block_rows` rows, 2 where the piece is worked flat; in a `spiral` each
    yarn works a round of its own behind the other.
    """

    kind: SequenceKind
    yarns: tuple[SequenceYarn, ...] = ()
    bands: tuple[Band, ...] = ()
    role: str = "main"
    from_row: int = 1
    to_row: int | None = None
    block_rows: int = 1
    spiral: bool = False
