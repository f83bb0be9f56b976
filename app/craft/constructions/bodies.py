"""Bodies: the measures of a garment's trunk in stitches and rows, and its part below the arms."""

from dataclasses import dataclass

from app.craft.constructions.bands import HEM, at_most, edge_band
from app.craft.constructions.drawing import Across, Band, DrawnPiece, Impossible, KnitRun, Wanted
from app.craft.sizes import EASES

EASE_NAMES = ("standard", *(one.name for one in EASES if one.name != "standard"))

BODY = ("straight", "fitted")

BODY_MEASURES = (
    "chest",
    "cross back",
    "armhole depth",
    "body length",
    "neck",
    "waist",
    "hips",
    "back waist length",
)
BODY_EASES = ("chest", "waist", "hips", "cross back", "armhole depth")
BODY_CHOICES = {"ease": EASE_NAMES, "body": BODY}

LEAST_ROWS = 2


@dataclass(frozen=True, slots=True)
class Trunk:
    """Half the body's stitches (a back) at hem, waist and underarm, the rows from the hem band to
    the underarm, of these to the waist, and from the underarm to the shoulder, the depth of the
    armhole in cm, and the hem."""

    hem: int
    waist: int
    across: int
    rows: int
    to_waist: int
    armhole: int
    armhole_cm: float
    hem_band: Band


def trunk_of(wanted: Wanted, depth_cm: float | None = None) -> Trunk:
    """The trunk, `depth_cm` of it above the underarm (the armhole's, if not said). Impossible where
    the body is too short for its armhole and hem."""
    knit = wanted.knit
    depth = wanted.cm("armhole depth") if depth_cm is None else depth_cm
    length = wanted.cm("body length") - depth
    band = at_most(wanted.bands[HEM], length / 3)
    armhole = knit.along(depth, 2)
    rows = knit.along(length + depth - band.depth_cm, 2) - armhole
    if rows < LEAST_ROWS:
        raise Impossible("nothing left", "the body is too short for its armhole and hem")
    across = knit.pairs(wanted.cm("chest") / 2)
    fitted = wanted.choices["body"] == "fitted"
    hem = knit.pairs(wanted.cm("hips") / 2) if fitted else across
    waist = knit.pairs(wanted.cm("waist") / 2) if fitted else across
    below = wanted.cm("body length") - wanted.cm("back waist length") - band.depth_cm
    to_waist = min(max(knit.along(below, 2), _quarter(rows)), rows - _quarter(rows))
    return Trunk(hem, waist, across, rows, to_waist, armhole, depth, band)


def trunk_places(trunk: Trunk, pieces: tuple[str, ...], missing: int) -> tuple[Across, ...]:
    """Where chest, waist and hips lie: around those pieces, which lack so many stitches."""
    return (
        Across("chest", pieces, trunk.rows, missing),
        Across("waist", pieces, trunk.to_waist, missing),
        Across("hips", pieces, 0, missing),
    )


def _quarter(rows: int) -> int:
    """The waist lies at least a quarter of the way from hem and underarm, or shaping gets steep."""
    return 2 * (rows // 8)


def below_arms(trunk: Trunk, times: int = 1, less: int = 0) -> tuple[KnitRun, ...]:
    """The runs to the underarm of `times` backs, `less` stitches fewer."""
    hem, waist, across = (times * one - less for one in (trunk.hem, trunk.waist, trunk.across))
    if hem == waist == across:
        return (KnitRun(trunk.rows, across, across),)
    above = trunk.rows - trunk.to_waist
    return (KnitRun(trunk.to_waist, hem, waist), KnitRun(above, waist, across))


def hem_below(
    wanted: Wanted,
    trunk: Trunk,
    name: str,
    stitches: int,
    *,
    in_round: bool = False,
    copies: int = 1,
    sewn: bool = False,
) -> tuple[DrawnPiece, ...]:
    """The hem of a piece that begins with `stitches`, or nothing."""
    width, band = wanted.knit.wide(stitches), trunk.hem_band
    made = edge_band(
        name, "band", band, width, stitches, in_round=in_round, copies=copies, sewn=sewn
    )
    return (made,) if made else ()
