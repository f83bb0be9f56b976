"""Which way up a piece is drawn: the way it is worn, though it may be worked from the top."""

from dataclasses import replace

from app.planning.picture_piece import Piece
from app.planning.picture_rows import upside_down

NEARLY = 0.9
"""From this share of its greatest width on, a piece begins or ends at its widest."""


def way_up(pieces: list[Piece]) -> list[Piece]:
    """The pieces as they are worn. A yoke or crown that grows, or a sleeve that begins wide, is
    worked from the top; with the yoke, so are the body and the neck."""
    from_top = any(one.place == "yoke" and _from_top(one) for one in pieces)
    return [_over(one) if _is_over(one, from_top) else one for one in pieces]


def _is_over(piece: Piece, garment_from_top: bool) -> bool:
    if piece.place in ("body", "neck"):
        return garment_from_top
    return _from_top(piece)


def _from_top(piece: Piece) -> bool:
    begun, ended = piece.bands[0].edge[0][1], piece.bands[-1].edge[-1][1]
    if piece.place in ("yoke", "crown"):
        return begun < NEARLY * ended
    return piece.place == "sleeve" and begun > NEARLY * piece.width and ended < NEARLY * begun


def _over(piece: Piece) -> Piece:
    return replace(piece, bands=upside_down(piece.bands))
