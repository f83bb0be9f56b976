"""Socks: in the round from the cuff, with a heel flap, a turned heel and a gusset."""

from dataclasses import dataclass

from app.craft.constructions.bands import CUFF, edge_band
from app.craft.constructions.drawing import (
    Across,
    Along,
    Construction,
    Drawing,
    DrawnPiece,
    Edging,
    Impossible,
    Join,
    Knit,
    KnitRun,
    Place,
    Places,
    Wanted,
    nearest,
)
from app.craft.constructions.pieces import at_both_sides, edging, piece

TURNED = 0.56
"""Stitches left of a heel after it is turned, as a share of the heel (practice)."""

TOE = 16
"""A toe is decreased to about one stitch in four, four at a time: 4 × the count over 16."""


@dataclass(frozen=True, slots=True)
class Sock:
    """Stitches around, of the heel (half of them), and left when it is turned; of the toe at its
    end; rounds of leg, plain foot and toe."""

    around: int
    heel: int
    turned: int
    tip: int
    leg: int
    foot: int
    toe: int


def draw(wanted: Wanted) -> Drawing:
    """A pair, both alike. Impossible where the foot is too short for heel and toe."""
    knit, sock = wanted.knit, _sock(wanted)
    band = wanted.bands[CUFF]
    width = knit.wide(sock.around)
    cuff = edge_band("cuffs", "cuff", band, width, sock.around, in_round=True, copies=2)
    turning = sock.heel - sock.turned
    heel = (
        KnitRun(sock.heel, sock.heel, sock.heel),
        KnitRun(turning, sock.turned - turning + 1, sock.turned),
    )
    foot = (
        KnitRun(sock.turned, sock.around + sock.turned, sock.around),
        KnitRun(sock.foot, sock.around, sock.around),
    )
    leg = KnitRun(sock.leg, sock.around, sock.around)
    toe = KnitRun(sock.toe, sock.around, sock.tip)
    pieces = (
        _pair("legs", "body", (leg,), knit, edges=edging(cast_on=cuff is None, cast_off=False)),
        _pair("heels", "piece", heel, knit, in_round=False, words=_heel_words(sock)),
        _pair("feet", "body", foot, knit, words=_foot_words(sock)),
        _pair("toes", "crown", (toe,), knit, words=_toe_words(toe)),
    )
    return Drawing(((cuff,) if cuff else ()) + pieces, (_gusset(sock),), places=_places(sock))


def _places(sock: Sock) -> Places:
    """The foot begins where the heel is turned; the leg ends there."""
    return (
        Across("foot", ("legs",)),
        Along("foot length", ("heels", "feet", "toes"), after=sock.heel),
        Along("leg", ("cuffs", "legs", "heels"), until=sock.heel),
    )


def _sock(wanted: Wanted) -> Sock:
    knit = wanted.knit
    around = 4 * max(nearest(knit.across(wanted.cm("foot")) / 4), 1)
    heel = around // 2
    turned = 2 * nearest(TURNED * heel / 2)
    tip = 4 * max(nearest(around / TOE), 1)
    toe = 3 * (around - tip) // 8
    foot = knit.along(wanted.cm("foot length")) - (heel - turned) - turned - toe
    leg = knit.along(wanted.cm("leg") - wanted.bands[CUFF].depth_cm) - heel
    if min(heel - turned, leg, foot, toe) < 1:
        raise Impossible("nothing left", "the foot or leg is too short for heel and toe")
    return Sock(around, heel, turned, tip, leg, foot, toe)


def _gusset(sock: Sock) -> Join:
    """Picked up along both sides of the flap: one stitch for every second row of it."""
    has = sock.turned + 2 * (sock.heel // 2) + sock.around - sock.heel
    return Join(
        "gusset",
        "heel and instep",
        "picked up along",
        has,
        sock.around + sock.turned,
        "stitches",
        -1,
        1,
    )


def _heel_words(sock: Sock) -> tuple[str, ...]:
    return (
        f"Work {sock.heel} rows to and fro on the {sock.heel} stitches of the heel.",
        f"Turn the heel in short rows, one stitch more and one decrease in each of "
        f"{sock.heel - sock.turned} rows: {sock.turned} stitches.",
    )


def _foot_words(sock: Sock) -> tuple[str, ...]:
    return (
        f"Pick up {sock.heel // 2} stitches along either side of the heel: "
        f"{sock.around + sock.turned} stitches with the instep.",
        f"Decrease one stitch on either side of the instep every 2nd round, "
        f"{sock.turned // 2} times: {sock.around} stitches.",
        f"Work {sock.foot} rounds.",
    )


def _toe_words(toe: KnitRun) -> tuple[str, ...]:
    half = toe.stitches_to // 2
    return at_both_sides(toe), f"Graft the {half} + {half} stitches that are left."


def _pair(
    name: str,
    place: Place,
    runs: tuple[KnitRun, ...],
    knit: Knit,
    *,
    in_round: bool = True,
    words: tuple[str, ...] | None = None,
    edges: Edging = "none",
) -> DrawnPiece:
    return piece(name, place, runs, knit, in_round=in_round, copies=2, edges=edges, words=words)


CONSTRUCTION = Construction(
    word="socks",
    title="Socks",
    measures=("foot", "foot length"),
    draw=draw,
    choices={},
    sizes={"leg": (20.0, 3.0)},
    eases=("foot", "foot length"),
    bands={CUFF: 4.0},
)
