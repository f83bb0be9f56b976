"""The set-in sleeve: an armhole shaped in to the shoulder, and a cap that fits into it."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil, hypot, sqrt

from app.craft.constructions.bodies import trunk_of
from app.craft.constructions.drawing import Impossible, Join, Knit, KnitRun, Wanted
from app.craft.constructions.flat_bodies import Arms, FlatBody
from app.craft.constructions.necklines import neck_of
from app.craft.constructions.pieces import edging, piece
from app.craft.constructions.sleeves import cuff_below, sleeve_of, sleeve_places

SHOULDER_SLOPE_CM = 2.0
"""How far a shoulder falls from the neck to the armhole (practice)."""

WIDEST_BACK = 0.92
"""The back above the arms is at most so much of the back below them (practice)."""

DEEPEST_SHAPING = 0.6
"""An armhole is shaped in over at most this share of its rows, every second one."""

ARM_IN_ARMHOLE = 0.55
"""An armhole is at least this share of the upper arm deep, so that a cap can rise in it."""

CAP_EASE = 0.02
"""A cap is so much longer than its armhole, to be eased in (practice: up to 5 %)."""

MOST_CAP_EASE = 0.05

CAP_TOP = 0.25
"""The top of a cap is cast off over at least this share of the sleeve's width."""

TALLEST_CAP = 0.9
"""A cap is at most this share of the armhole's depth tall; a thin arm gets a wider sleeve."""


def set_in_trunk(wanted: Wanted) -> FlatBody:
    """A body shaped in to the cross back, with sloping shoulders. Impossible where the neck leaves
    no shoulders, or the body is too short."""
    knit = wanted.knit
    depth = wanted.cm("armhole depth")
    if "upper arm" in wanted.measures:
        depth = max(depth, ARM_IN_ARMHOLE * wanted.cm("upper arm"))
    trunk = trunk_of(wanted, depth)
    widest = 2 * int(WIDEST_BACK * trunk.across / 2)
    cross = min(knit.pairs(wanted.cm("cross back")), widest)
    neck = neck_of(wanted, cross, depth)
    removed = (trunk.across - cross) // 2
    slanted = min(removed // 2, int(DEEPEST_SHAPING * trunk.armhole / 2))
    at_once, straight = removed - slanted, trunk.armhole - 2 * slanted
    slope = max(knit.along(SHOULDER_SLOPE_CM, 2), 2)
    last = neck.width + 2 * ceil((cross - neck.width) / (slope + 2))
    above = (
        (2 * slanted, trunk.across - 2 * at_once, cross),
        (straight, cross, cross),
        (slope, cross, last),
    )
    side = hypot(knit.wide(slanted), knit.long(2 * slanted)) + knit.long(straight)
    return FlatBody(trunk, above, knit.wide(at_once) + side, at_once)


@dataclass(frozen=True, slots=True)
class Cap:
    """The stitches of a cap after its underarm and at its top, its rows, and half its edge in cm,
    from the underarm seam to the middle of the top."""

    begun: int
    top: int
    rows: int
    edge_cm: float


def set_in_sleeves(wanted: Wanted, body: FlatBody) -> Arms:
    """Both sleeves with their caps. Impossible where no cap fits into the armhole."""
    knit = wanted.knit
    upper, cap = _sleeve_and_cap(wanted, body)
    sleeve = sleeve_of(wanted, upper, every=2)
    runs = (sleeve.run, KnitRun(cap.rows, cap.begun, cap.top))
    cuffs = cuff_below(wanted, sleeve, in_round=False)
    edges = edging(cast_on=not cuffs, cast_off=True, sewn=True)
    made = piece("sleeves", "sleeve", runs, knit, copies=2, edges=edges)
    join = _fits("cap of the sleeve", 2 * cap.edge_cm, 2 * body.armhole_edge_cm)
    return Arms((*cuffs, made), (join,), sleeve_places(wanted, sleeve))


def _fits(name: str, cap_cm: float, armhole_cm: float) -> Join:
    most = MOST_CAP_EASE * armhole_cm
    return Join(name, "armhole", "eased into", cap_cm, armhole_cm, "cm", -most / 5, most)


def _sleeve_and_cap(wanted: Wanted, body: FlatBody) -> tuple[int, Cap]:
    """The sleeve's stitches at the underarm: those of the arm, or more where its cap would stand
    taller than the armhole."""
    upper = wanted.knit.pairs(wanted.cm("upper arm"))
    tallest = wanted.knit.along(TALLEST_CAP * body.trunk.armhole_cm)
    cap = _cap(wanted.knit, upper, body)
    while cap.rows > tallest:
        upper += 2
        cap = _cap(wanted.knit, upper, body)
    return upper, cap


def _cap(knit: Knit, upper: int, body: FlatBody) -> Cap:
    """The narrowest top whose cap fits the armhole with its ease and loses no more than a stitch
    at each end of a row."""
    for cap in _caps(knit, upper, body):
        fits = _fits("cap", cap.edge_cm, body.armhole_edge_cm).holds
        if fits and (cap.begun - cap.top) // 2 <= cap.rows:
            return cap
    raise Impossible("sleeve does not fit", "no cap of this sleeve fits into its armhole")


def _caps(knit: Knit, upper: int, body: FlatBody) -> Iterator[Cap]:
    begun = upper - 2 * min(body.underarm, upper // 6)
    wanted = (1 + CAP_EASE) * body.armhole_edge_cm
    for top in range(2 * ceil(CAP_TOP * upper / 2), begun, 2):
        across, level = knit.wide((begun - top) / 2), knit.wide((upper - begun + top) / 2)
        rows = knit.along(sqrt(max((wanted - level) ** 2 - across**2, 0.0)))
        yield Cap(begun, top, rows, level + hypot(across, knit.long(rows)))
