"""Why yarns cannot take turns as they were asked to."""

from dataclasses import dataclass
from typing import Literal

Reason = Literal[
    "too little",
    "too little together",
    "enough without a fade",
    "no room for a fade",
    "no rows",
    "knit already",
]


@dataclass(eq=False)
class Refused(Exception):
    """`reason` in a word; the `role` whose yarn it is about, `short_m` what it lacks in m, and the
    last `row` it could reach."""

    reason: Reason
    role: str = ""
    short_m: float = 0.0
    row: int = 0
