"""How a figure was worked out: a line of working each, with its source."""

from dataclasses import dataclass
from typing import Literal

Standing = Literal["measured", "published", "derived", "practice", "memory", "assumed"]
"""How far to trust a number: measured by the maker, seen in a named source, or less."""


@dataclass(frozen=True, slots=True)
class Step:
    """`what` was found, `how` (the sum in figures, metric), its value, unit and standard
    uncertainty, the `source` of the formula or number, and how far it is to be trusted."""

    what: str
    how: str
    value: float
    unit: str
    u: float | None = None
    source: str = ""
    standing: Standing = "derived"
