"""An errand: a line the maker adds to the work list herself."""

from dataclasses import dataclass
from datetime import date

from app.book.words import ErrandKind


@dataclass(frozen=True, slots=True)
class Errand:
    """`done` is the day it was ticked off."""

    id: str
    text: str
    kind: ErrandKind = "other"
    plan_id: str | None = None
    done: date | None = None
