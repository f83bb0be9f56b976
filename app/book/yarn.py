"""A yarn (a lot): skeins meant to be alike, spun or bought, or still to be made."""

from dataclasses import dataclass

from app.book.spinning import FibreShare, Spinning
from app.book.words import Twist


@dataclass(frozen=True, slots=True)
class Yarn:
    """`fleece_id` is the wool it is spun from; None for a bought yarn or unknown wool.

    `target_tex` is the linear density aimed at in g/km, for a yarn with no skein to measure;
    `twist` is the direction of the final twist (ISO 2); `bought` tells a shop's yarn from her own;
    `ball_mg` and `ball_mm` are what the label of a bought ball states;
    `blend` is what a bought yarn is made of, empty where all of it is `fibre`; `spinning` how a
    yarn is meant to be spun.
    """

    id: str
    name: str
    fibre: str = "wool"
    plies: int | None = None
    twist: Twist = ""
    fleece_id: str | None = None
    target_tex: float | None = None
    bought: bool = False
    ball_mg: int | None = None
    ball_mm: int | None = None
    colour: str = ""
    colour_name: str = ""
    notes: str = ""
    blend: tuple[FibreShare, ...] = ()
    spinning: Spinning | None = None
