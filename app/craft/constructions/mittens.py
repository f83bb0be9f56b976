"""Mittens: in the round from the cuff, with a gusset for the thumb."""

from dataclasses import dataclass
from math import ceil

from app.craft.constructions.bands import CUFF, edge_band
from app.craft.constructions.drawing import (
    Across,
    Along,
    Construction,
    Drawing,
    DrawnPiece,
    Impossible,
    Join,
    KnitRun,
    Place,
    Wanted,
    nearest,
)
from app.craft.constructions.pieces import BOTH_SIDES, at_both_sides, edging, piece, words_of
from app.craft.shaping import shaping_text

THUMB = 0.40
"""Around the thumb, as a share of the hand around (practice)."""

GUSSET, TOP, THUMB_LENGTH = 0.35, 0.22, 0.33
"""Lengths of the gusset, the shaped top and the thumb, as shares of the hand's (practice)."""

BRIDGE = 2
"""Stitches picked up over the opening when the thumb is knit."""

TIP = 8
"""Stitches at the tip of the hand, drawn together."""


@dataclass(frozen=True, slots=True)
class Hand:
    """Stitches around hand and thumb; rounds of the gusset, the straight hand, its top, and the
    thumb."""

    around: int
    thumb: int
    gusset: int
    straight: int
    top: int
    thumb_rounds: int


def draw(wanted: Wanted) -> Drawing:
    """A pair, both alike. Impossible where a hand is too small for its shaping at this gauge."""
    knit, hand = wanted.knit, _hand(wanted)
    band = wanted.bands[CUFF]
    width = knit.wide(hand.around)
    cuff = edge_band("cuffs", "cuff", band, width, hand.around, in_round=True, copies=2)
    wide = hand.around + hand.thumb - BRIDGE
    hands = (
        KnitRun(hand.gusset, hand.around, wide),
        KnitRun(hand.straight, hand.around, hand.around),
        KnitRun(hand.top, hand.around, TIP),
    )
    straight = hand.thumb_rounds - hand.thumb // 4
    thumb = (
        KnitRun(straight, hand.thumb, hand.thumb),
        KnitRun(hand.thumb // 4, hand.thumb, hand.thumb // 4 * 2),
    )
    join = Join(
        "thumb", "gusset", "knit on from", hand.thumb, wide - hand.around + BRIDGE, "stitches", 0, 0
    )
    pieces = (
        _pair("hands", "body", hands, wanted, _hand_words(hand, wide), cast_on=cuff is None),
        _pair("thumbs", "sleeve", thumb, wanted, _thumb_words(thumb)),
    )
    places = (Across("hand", ("hands",)), Along("hand length", ("hands",)))
    return Drawing(((cuff,) if cuff else ()) + pieces, (join,), places=places)


def _hand(wanted: Wanted) -> Hand:
    knit, length = wanted.knit, wanted.cm("hand length")
    around = knit.pairs(wanted.cm("hand"))
    gusset = knit.along(GUSSET * length)
    top = max(knit.along(TOP * length), ceil((around - TIP) / BOTH_SIDES))
    thumb_rounds = knit.along(THUMB_LENGTH * length)
    thumb = 4 * max(nearest(knit.across(THUMB * wanted.cm("hand")) / 4), 1)
    straight = knit.along(length) - gusset - top
    if around <= TIP or min(gusset, straight, top, thumb_rounds - thumb // 4) < 1:
        raise Impossible("nothing left", "the hand is too small for a mitten at this gauge")
    return Hand(around, thumb, gusset, straight, top, thumb_rounds)


def _pair(
    name: str,
    place: Place,
    runs: tuple[KnitRun, ...],
    wanted: Wanted,
    words: tuple[str, ...],
    cast_on: bool = False,
) -> DrawnPiece:
    edges = edging(cast_on=cast_on, cast_off=False)
    return piece(name, place, runs, wanted.knit, in_round=True, copies=2, edges=edges, words=words)


def _thumb_words(runs: tuple[KnitRun, ...]) -> tuple[str, ...]:
    return (
        *words_of(runs, in_round=True),
        f"Draw the yarn through the {runs[-1].stitches_to} stitches that are left.",
    )


def _hand_words(hand: Hand, wide: int) -> tuple[str, ...]:
    return (
        shaping_text(hand.gusset, hand.around, wide, in_round=True),
        f"Leave the {wide - hand.around} stitches of the gusset on a thread for the thumb, which "
        f"takes {BRIDGE} more above them; go on with {hand.around} stitches.",
        shaping_text(hand.straight, hand.around, hand.around, in_round=True),
        at_both_sides(KnitRun(hand.top, hand.around, TIP)),
        f"Draw the yarn through the {TIP} stitches that are left.",
    )


CONSTRUCTION = Construction(
    word="mittens",
    title="Mittens",
    measures=("hand", "hand length"),
    draw=draw,
    choices={},
    sizes={},
    eases=("hand",),
    bands={CUFF: 6.0},
)
