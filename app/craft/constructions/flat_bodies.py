"""Bodies knit flat: back and front, or back and two fronts, and what is picked up around them."""

from dataclasses import dataclass

from app.craft.constructions.bands import FRONT, Made, joins_of
from app.craft.constructions.belonging import belonging
from app.craft.constructions.bodies import Trunk, below_arms, hem_below, trunk_of, trunk_places
from app.craft.constructions.corners import closed_neck, front_bands, opened_neck
from app.craft.constructions.drawing import (
    Across,
    Along,
    Drawing,
    DrawnPiece,
    Edging,
    Join,
    KnitRun,
    Places,
    Wanted,
    nearest,
)
from app.craft.constructions.necklines import (
    Neck,
    Profile,
    back_opening,
    front_opening,
    neck_edge_cm,
    neck_of,
    open_up,
)
from app.craft.constructions.pieces import edging, piece, words_of

ARMHOLES_BEGIN = "Mark the edges of the row: the armholes begin here."
"""What is told where no stitch is cast off at the underarm."""


@dataclass(frozen=True, slots=True)
class FlatBody:
    """A trunk and its shape above the arms as a whole back, with the length of one armhole, front
    or back, in cm, and the stitches cast off at each underarm."""

    trunk: Trunk
    above: Profile
    armhole_edge_cm: float
    underarm: int = 0

    @property
    def rows_above(self) -> int:
        return sum(rows for rows, _, _ in self.above)

    def halved(self, less: int) -> Profile:
        """The shape above the arms of a half front."""
        return tuple((rows, a // 2 - less, b // 2 - less) for rows, a, b in self.above)


@dataclass(frozen=True, slots=True)
class Arms:
    """What is sewn or knit to the armholes, how it meets them, and where an arm's measures lie."""

    pieces: tuple[DrawnPiece, ...]
    joins: tuple[Join, ...]
    places: Places = ()


def straight_trunk(wanted: Wanted) -> FlatBody:
    """A body that goes straight on above the arms; the armhole is at least as deep as half the
    upper arm where there are sleeves."""
    depth = wanted.cm("armhole depth")
    if "upper arm" in wanted.measures:
        depth = max(depth, wanted.cm("upper arm") / 2)
    trunk = trunk_of(wanted, depth)
    above = ((trunk.armhole, trunk.across, trunk.across),)
    return FlatBody(trunk, above, wanted.knit.long(trunk.armhole))


def back_and_front(wanted: Wanted, body: FlatBody, arms: Arms) -> Drawing:
    """A pullover or closed waistcoat."""
    neck = _neck(wanted, body)
    below = below_arms(body.trunk)
    front = open_up(body.above, front_opening(neck, body.rows_above))
    name = "back and front hems"
    hems = hem_below(wanted, body.trunk, name, body.trunk.hem, copies=2, sewn=True)
    edges = edging(cast_on=not hems, cast_off=True, sewn=True)
    pieces = (
        *hems,
        _back(wanted, body, neck, edges),
        piece(
            "front",
            "front",
            below + front,
            wanted.knit,
            edges=edges,
            words=_told(body, below, front),
        ),
    )
    around = closed_neck(wanted, neck, neck_edge_cm(neck, wanted.knit))
    shoulders = _shoulders(body, neck, front[-1].stitches_to // 2)
    places = _places(body.trunk, (name, "back"), ("back", "front"), 0)
    return _drawing(pieces, arms, around, shoulders, places)


def back_and_fronts(wanted: Wanted, body: FlatBody, arms: Arms) -> Drawing:
    """A cardigan or opened waistcoat: the fronts meet under bands that lie over each other."""
    neck, knit = _neck(wanted, body), wanted.knit
    less = overlap(wanted, neck)
    half = neck.halved(less)
    front = open_up(body.halved(less), front_opening(half, body.rows_above), step=1)
    below = halved(below_arms(body.trunk), less)
    hems = (
        *hem_below(wanted, body.trunk, "back hem", body.trunk.hem, sewn=True),
        *hem_below(wanted, body.trunk, "front hems", below[0].stitches, copies=2, sewn=True),
    )
    edges = edging(cast_on=not hems, cast_off=True, sewn=True)
    words = _told(body, below, front, half=True)
    fronts = piece(
        "fronts", "front", below + front, knit, copies=2, half=True, edges=edges, words=words
    )
    pieces = (*hems, _back(wanted, body, neck, edges), fronts)
    up_front = front_bands(
        wanted, knit.long(fronts.rows - neck.front) + body.trunk.hem_band.depth_cm
    )
    around = opened_neck(wanted, neck, neck_edge_cm(neck, knit) - 2 * knit.wide(less))
    shoulders = _shoulders(body, neck, front[-1].stitches_to)
    places = _places(body.trunk, ("back hem", "back"), ("back", "fronts", "fronts"), 2 * less)
    return _drawing(pieces, arms, up_front + around, shoulders, places)


def halved(runs: tuple[KnitRun, ...], less: int) -> tuple[KnitRun, ...]:
    """Half of each run, `less` stitches fewer."""
    return tuple(
        KnitRun(run.rows, run.stitches // 2 - less, run.stitches_to // 2 - less) for run in runs
    )


def overlap(wanted: Wanted, neck: Neck) -> int:
    """Stitches a front lacks to the middle, where the bands lie over each other."""
    wide = wanted.bands[FRONT].depth_cm / 2
    return min(nearest(wanted.knit.across(wide)), neck.width // 2 - 1)


def _neck(wanted: Wanted, body: FlatBody) -> Neck:
    _, across, _ = body.above[-1]
    neck = neck_of(wanted, across, wanted.knit.long(body.trunk.armhole))
    belonging(wanted)
    return neck


def _back(wanted: Wanted, body: FlatBody, neck: Neck, edges: Edging) -> DrawnPiece:
    runs = open_up(body.above, back_opening(neck, body.rows_above))
    below = below_arms(body.trunk)
    words = _told(body, below, runs)
    return piece("back", "back", below + runs, wanted.knit, edges=edges, words=words)


def _told(
    body: FlatBody, below: tuple[KnitRun, ...], above: tuple[KnitRun, ...], half: bool = False
) -> tuple[str, ...]:
    """The work of a piece in words, with a mark at the underarm where nothing is cast off there."""
    below, above = (tuple(run for run in runs if run.rows) for runs in (below, above))
    told = words_of(below + above, half=half)
    if body.underarm:
        return told
    at = len(words_of(below, half=half))
    return (*told[:at], ARMHOLES_BEGIN, *told[at:])


def _shoulders(body: FlatBody, neck: Neck, front: int) -> Join:
    back = (body.above[-1][2] - neck.width) // 2
    return Join(
        "front shoulder", "back shoulder", "sewn or grafted to", front, back, "stitches", 0, 0
    )


def _places(
    trunk: Trunk, upwards: tuple[str, ...], around: tuple[str, ...], missing: int
) -> Places:
    """Where the measures lie: one above the other, and around the body."""
    shoulder = trunk.rows + trunk.armhole
    return (
        *trunk_places(trunk, around, missing),
        Across("cross back", ("back",), shoulder),
        Along("armhole depth", ("back",), trunk.rows, shoulder),
        Along("body length", upwards, until=shoulder),
    )


def _drawing(
    pieces: tuple[DrawnPiece, ...], arms: Arms, bands: Made, shoulders: Join, places: Places
) -> Drawing:
    around = tuple(made for made, _ in bands)
    joins = (shoulders, *arms.joins, *joins_of(bands))
    return Drawing(pieces + arms.pieces + around, joins, places=places + arms.places)


OPENED, CLOSED = "opened", "closed"
FRONTS = (OPENED, CLOSED)


def fronts_as_chosen(wanted: Wanted, body: FlatBody, arms: Arms) -> Drawing:
    """A body whose front is opened or closed by choice."""
    opened = wanted.choices["front"] == OPENED
    return (back_and_fronts if opened else back_and_front)(wanted, body, arms)
