"""Places in a garment as a knitter says them."""

from app.planning.knitting.course import Place

END = "beyond the end of the garment"


def place_said(place: Place | None) -> str:
    """A place in words: "row 64 of the sleeves, 1 of 2"; None lies beyond the end."""
    return f"row {place.rows} of {piece_said(place)}" if place else END


def piece_said(place: Place) -> str:
    """A piece of a part: "the body", "the sleeves, 2 of 2"."""
    of = f", {place.piece} of {place.pieces}" if place.pieces > 1 else ""
    return f"the {place.part.lower()}{of}"
