"""Bodies knit in one piece to the underarm, joined with their sleeves into one yoke."""

from dataclasses import dataclass, replace

from app.craft.constructions.bands import Made, joins_of
from app.craft.constructions.bodies import Trunk, below_arms, hem_below, trunk_places
from app.craft.constructions.corners import closed_neck, front_bands, opened_neck, yoke_neck
from app.craft.constructions.drawing import (
    Along,
    Drawing,
    DrawnPiece,
    Join,
    Knit,
    Places,
    Wanted,
)
from app.craft.constructions.necklines import Neck
from app.craft.constructions.pieces import Runs, at_both_sides, edging, outline, piece
from app.craft.constructions.sleeves import Sleeve, cuff_below, sleeve_places


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
    """A yoke in runs and words; `front_rows` of it lie along an opened front. Its band is picked up
    around a neckline of that shape, along `edge_cm`; without one it is knit on from the last
    stitches."""

    runs: Runs
    words: tuple[str, ...]
    front_rows: int
    neck: Neck | None = None
    edge_cm: float = 0.0


def in_one_piece(wanted: Wanted, joined: Joined, yoke: Yoke) -> Drawing:
    """The whole garment: body, sleeves, yoke and bands."""
    tube, knit = joined.less is None, wanted.knit
    below = below_arms(joined.trunk, times=2, less=joined.missing)
    hem = hem_below(wanted, joined.trunk, "hem", below[0].stitches, in_round=tube)
    cuffs = cuff_below(wanted, joined.sleeve, in_round=True)
    sleeve = (joined.sleeve.run,)
    bands = _bands(wanted, joined, yoke)
    goes_on = yoke.neck is None and "neck band" in {one.name for one, _ in bands}
    pieces = (
        *hem,
        piece(
            "body",
            "body",
            below,
            knit,
            in_round=tube,
            edges=edging(cast_on=not hem, cast_off=False),
            words=tuple(at_both_sides(run, tube) for run in below),
        ),
        *cuffs,
        piece(
            "sleeves",
            "sleeve",
            sleeve,
            knit,
            in_round=True,
            copies=2,
            edges=edging(cast_on=not cuffs, cast_off=False),
        ),
        _yoke(yoke, knit, tube, cast_off=not goes_on),
    )
    joins = (_meets(joined, below[-1].stitches_to, yoke), *joins_of(bands))
    whole = pieces + tuple(made for made, _ in bands)
    return Drawing(whole, joins, _underarms(joined), _places(wanted, joined))


def _places(wanted: Wanted, joined: Joined) -> Places:
    """A yoke has no back of its own, and so no width across it."""
    return (
        *trunk_places(joined.trunk, ("body",), joined.missing),
        Along("armhole depth", ("yoke",)),
        Along("body length", ("hem", "body", "yoke")),
        *sleeve_places(wanted, joined.sleeve),
    )


def _yoke(yoke: Yoke, knit: Knit, tube: bool, *, cast_off: bool) -> DrawnPiece:
    """Cut open along an opened front, its neckline lies at both ends of its rows."""
    cut = tuple(replace(run, gap=0, gap_to=0) for run in yoke.runs if run.rows)
    return piece(
        "yoke",
        "yoke",
        yoke.runs,
        knit,
        in_round=tube,
        edges=edging(cast_on=False, cast_off=cast_off),
        words=yoke.words,
        drawn=None if tube else outline(cut, knit),
    )


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
    """Up the fronts first, so that the neck's band can meet them."""
    opened = joined.less is not None
    fronts = _up_the_front(wanted, joined, yoke) if opened else ()
    if yoke.neck is None:
        return fronts + yoke_neck(wanted, yoke.runs[-1].stitches_to, opened=opened)
    around = opened_neck if opened else closed_neck
    return fronts + around(wanted, yoke.neck, yoke.edge_cm)


def _up_the_front(wanted: Wanted, joined: Joined, yoke: Yoke) -> Made:
    edge = wanted.knit.long(joined.trunk.rows + yoke.front_rows) + joined.trunk.hem_band.depth_cm
    return front_bands(wanted, edge)
