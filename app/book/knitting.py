"""What is known of a garment while it is on the needles, and of what it took."""

from dataclasses import dataclass
from datetime import date


@dataclass(frozen=True, slots=True)
class Settled:
    """A number of the day a garment was cast on, by its name: what was learned of the maker's hand
    by then, and how unsure it was (`u`). Later learning does not move it."""

    name: str
    value: float
    u: float


@dataclass(frozen=True, slots=True)
class CastOn:
    """The day a garment was cast on, and the numbers it was begun with."""

    day: date
    numbers: tuple[Settled, ...] = ()


@dataclass(frozen=True, slots=True)
class Took:
    """What a part really took in all its copies: `mg` and `mm` of a role's yarn, and the `minutes`
    it was knit in."""

    part_id: str
    role: str = "main"
    mg: int | None = None
    mm: int | None = None
    minutes: int | None = None


@dataclass(frozen=True, slots=True)
class Progress:
    """`rows` of a `piece` of a part (1, or 2 of two sleeves) are done."""

    id: str
    plan_id: str
    part_id: str
    piece: int
    rows: int
    day: date


@dataclass(frozen=True, slots=True)
class Weighing:
    """A ball on the needles, weighed when `rows` of a piece of a part were done.

    `mg` is what the scale showed, in steps of `scale_mg`; `typed` what was typed; `minute` that of
    the day.
    """

    id: str
    plan_id: str
    part_id: str
    piece: int
    rows: int
    holding_id: str
    mg: int
    typed: str
    scale_mg: int
    day: date
    minute: int | None = None
