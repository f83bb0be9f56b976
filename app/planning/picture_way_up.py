"""Which way up a piece is drawn: the way it is worn, though it may be worked from the top."""

from app.book.words import Place

NEARLY = 0.9
"""From this share of its greatest width on, a piece begins or ends at its widest."""


def over(place: Place, stitches: tuple[int, int, int], garment_from_top: bool) -> bool:
    """Whether a piece of these first, most and last stitches is worked from its upper edge down.
    With a yoke that is, so are the body and the neck."""
    if place in ("body", "neck"):
        return garment_from_top
    return from_top(place, stitches)


def from_top(place: Place, stitches: tuple[int, int, int]) -> bool:
    """A yoke or crown that grows, or a sleeve that begins wide, is worked from the top."""
    begun, most, ended = stitches
    if place in ("yoke", "crown"):
        return begun < NEARLY * ended
    return place == "sleeve" and begun > NEARLY * most and ended < NEARLY * begun
