"""How a yarn is meant to be spun."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class FibreShare:
    """So many percent of a fibre, by mass."""

    fibre: str
    pct: float


@dataclass(frozen=True, slots=True)
class Spinning:
    """Targets of a yarn still to be made; what is None follows from the others.

    `use` is a word of the twist table; `ratio` the wheel's, `draft_mm` what is drafted for one
    treadle; twists in turns per metre, of the plied yarn and of its singles; `wraps` per inch;
    `chained` if one single is plied on itself; `wanted_mm` of finished yarn.
    """

    use: str = ""
    wheel_id: str | None = None
    ratio: float | None = None
    draft_mm: int | None = None
    ply_twist_per_m: float | None = None
    singles_twist_per_m: float | None = None
    wraps: float | None = None
    preparation: str = ""
    chained: bool = False
    like_yarn_id: str | None = None
    wanted_mm: int | None = None
    note: str = ""
