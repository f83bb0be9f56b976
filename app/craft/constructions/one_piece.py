"""Bodies knit in one piece to the underarm, joined with their sleeves into one yoke."""

from dataclasses import dataclass, replace

from app.craft.constructions.bands import NECK, Made, live, picked_up
from app.craft.constructions.bodies import Trunk, below_arms, hem_below
from app.craft.constructions.drawing import (
    Drawing,
    DrawnPiece,
    Edging,
    Join,
    Knit,
    KnitRun,
    Wanted,
)
from app.craft.constructions.flat_bodies import front_bands
from app.craft.constructions.pieces import outline, piece
from app.craft.constructions.sleeves import Sleeve, cuff_below
from app.craft.shaping import shaping_text

SIDES, AT_ONCE = "on each side of both side markers on", 4


@dataclass(frozen=True, slots=True)
class Joined:
    """A trunk and its sleeves where they meet: `underarm` stitches of each rest at each underarm,
    and an opened front lacks `less` stitches on either side of the middle (None: it is closed)."""

    trunk: Trunk
    sleeve: Sleeve
    underarm: int
    less: int | None

    @property
    def around(self) -> int:
        """Stitches around the body at the underarm, as if it were closed."""
        return 2 * self.trunk.across

    @property
    def missing(self) -> int:
        """Stitches an opened front lacks in all."""
        return 2 * (self.less or 0)

    @property
    def count(self) -> int:
        """Stitches on the needle when body and sleeves are joined."""
        return self.around - self.missing + 2 * self.sleeve.upper - 4 * self.underarm


@dataclass(frozen=True, slots=True)
class Yoke:
    """A yoke in runs and words; its neck is picked up along `edge_cm`, or knit on from the last
    stitches where that is None; `front_rows` of it lie along an opened front."""

    runs: tuple[KnitRun, ...]
    words: tuple[str, ...]
    edge_cm: float | None
    front_rows: int


def in_one_piece(wanted: Wanted, joined: Joined, yoke: Yoke) -> Drawing:
    """The whole garment: body, sleeves, yoke and bands."""
    tube, knit = joined.less is None, wanted.knit
    below = below_arms(joined.trunk, times=2, less=joined.missing)
    hem = hem_below(wanted, joined.trunk, "hem", below[0].stitches, tube)
    cuffs = cuff_below(wanted, joined.sleeve, in_round=True)
    sleeve = (joined.sleeve.run,)
    pieces = (
        *hem,
        piece(
            "body",
            "body",
            below,
            knit,
            in_round=tube,
            edges=_edges(tube and bool(hem)),
            words=tuple(_at_the_sides(run, tube) for run in below),
        ),
        *cuffs,
        piece(
            "sleeves",
            "sleeve",
            sleeve,
            knit,
            in_round=True,
            copies=2,
            edges=_edges(bool(cuffs)),
        ),
        _yoke(yoke, knit, tube),
    )
    bands = _bands(wanted, joined, yoke)
    joins = (_meets(joined, below[-1].stitches_to, yoke), *(join for _, join in bands))
    return Drawing(pieces + tuple(made for made, _ in bands), joins, _underarms(joined))


def _yoke(yoke: Yoke, knit: Knit, tube: bool) -> DrawnPiece:
    """Cut open along an opened front, its neckline lies at both ends of its rows."""
    cut = tuple(replace(run, gap=0, gap_to=0) for run in yoke.runs if run.rows)
    return piece(
        "yoke",
        "yoke",
        yoke.runs,
        knit,
        in_round=tube,
        edges="none",
        words=yoke.words,
        drawn=None if tube else outline(cut, knit),
    )


def _at_the_sides(run: KnitRun, tube: bool) -> str:
    """A body in one piece is shaped at both its sides, a stitch before and after each marker."""
    return shaping_text(run.rows, run.stitches, run.stitches_to, tube, SIDES, ends=AT_ONCE)


def _edges(cast_on_below: bool) -> Edging:
    return "none" if cast_on_below else "cast on and off"


def _meets(joined: Joined, body: int, yoke: Yoke) -> Join:
    has = yoke.runs[0].stitches
    wants = body + 2 * joined.sleeve.upper - 4 * joined.underarm
    return Join("yoke", "body and sleeves", "joined to", has, wants, "stitches", 0, 0)


def _underarms(joined: Joined) -> tuple[str, ...]:
    return (
        f"Leave {joined.underarm} stitches of the body and of each sleeve on a thread at each "
        "underarm and graft them together at the end.",
    )


def _bands(wanted: Wanted, joined: Joined, yoke: Yoke) -> Made:
    tube = joined.less is None
    neck = wanted.bands[NECK]
    around = (
        live("neck band", "neck", neck, yoke.runs[-1].stitches_to, in_round=tube)
        if yoke.edge_cm is None
        else picked_up("neck band", "neck", neck, yoke.edge_cm, in_round=tube)
    )
    return around if tube else around + _up_the_front(wanted, joined, yoke)


def _up_the_front(wanted: Wanted, joined: Joined, yoke: Yoke) -> Made:
    edge = wanted.knit.long(joined.trunk.rows + yoke.front_rows) + joined.trunk.hem_band.depth_cm
    return front_bands(wanted, edge)
