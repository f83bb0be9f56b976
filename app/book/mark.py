"""A mark: what the maker decided about one observation that the program learns from."""

from dataclasses import dataclass
from datetime import date

from app.book.words import Verdict


@dataclass(frozen=True, slots=True)
class Mark:
    """`id` is the key of the observation: what it was taken from, and what it tells of."""

    id: str
    verdict: Verdict
    day: date
    why: str = ""
