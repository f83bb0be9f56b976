"""How far each yarn is from its share where it is furthest, in changes of yarn."""

from app.book.sequence import Sequence
from app.craft.alternate import ramp, strays
from app.planning.sequence_piece import Piece
from app.planning.sequence_rows import in_blocks, place_in
from app.planning.sequence_spread import Knit


def stray_of(knit: Knit) -> dict[str, float]:
    """By role, in shares of the longest that is knit between two changes; none for stripes."""
    found: dict[str, float] = {}
    for piece, sequence in knit:
        if sequence and sequence.yarns:
            for role, stray in _of_piece(piece, sequence).items():
                found[role] = max(found.get(role, 0.0), stray)
    return found


def _of_piece(piece: Piece, sequence: Sequence) -> dict[str, float]:
    first, last = place_in(piece.rows, sequence)
    roles = [one.role for one in sequence.yarns]
    blocks = in_blocks(piece.stitches[first:last], sequence.block_rows)
    knit = piece.roles(sequence)[first:last]
    turns = [roles.index(one) for one in knit[:: sequence.block_rows]]
    shares = ramp(
        [one.share for one in sequence.yarns],
        [one.share_to for one in sequence.yarns],
        len(blocks),
    )
    apart = strays(blocks, shares, turns)
    return {role: one / max(blocks) for role, one in zip(roles, apart, strict=True)}
