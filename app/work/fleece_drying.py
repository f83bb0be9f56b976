"""Whether drying wool is dry: successive weighings agree (common practice)."""

from collections.abc import Sequence

from app.book.reading import Reading

AGREES_PCT = 0.5
"""Two weighings of drying wool agree where they differ by no more than this (practice)."""


def lost_since_last(readings: Sequence[Reading]) -> float | None:
    """Percent lost between the last two damp weighings, oldest first; None before there are two."""
    damp = [one.value for one in readings if one.kind == "mass" and one.wool == "damp"]
    if len(damp) < 2 or not damp[-2]:
        return None
    return 100 * (damp[-2] - damp[-1]) / damp[-2]
