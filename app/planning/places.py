"""Where a part lies in its garment: as she said, else as its name tells."""

import re

from app.book.plan import Part
from app.book.words import Place

WORDS: tuple[tuple[str, Place], ...] = (
    ("sleeves?", "sleeve"),
    ("neck|collar|hood", "neck"),
    ("bands?|borders?|hems?|welts?|edging", "band"),
    ("cuffs?", "cuff"),
    ("yoke", "yoke"),
    ("crown", "crown"),
    ("fronts?", "front"),
    ("back", "back"),
    ("body|sides", "body"),
)
"""What a part is called, and where it lies; the first that is found counts."""

TUBES: frozenset[Place] = frozenset({"body", "sleeve", "yoke", "crown", "cuff", "neck"})
"""Places that are worked in the round where nothing says otherwise."""


def place_of(part: Part) -> Place:
    """The place a part was given, else the one its name tells, else that of a piece by itself."""
    if part.place:
        return part.place
    for words, place in WORDS:
        if re.search(rf"\b(?:{words})\b", part.name, re.IGNORECASE):
            return place
    return "piece"


def in_round(part: Part) -> bool:
    """Whether a part is a tube: as it says, else by its place, if it has no seams."""
    if part.in_round or part.place:
        return part.in_round
    return "seams" not in part.edges and place_of(part) in TUBES
