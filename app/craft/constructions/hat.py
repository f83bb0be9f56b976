"""The hat: in the round from the brim, the crown drawn together in wedges."""

from app.craft.constructions.bands import edge_band
from app.craft.constructions.belonging import head_of
from app.craft.constructions.drawing import (
    Across,
    Construction,
    Drawing,
    Impossible,
    KnitRun,
    Wanted,
    nearest,
)
from app.craft.constructions.pieces import edging, piece
from app.craft.shaping import counted, even_spacing, spacing_text, turns_of

BRIM = "brim"

WEDGES = 8

HEIGHT, CROWN = 0.42, 0.14
"""Height from the brim's edge to the top, and of the crown alone, as shares of the head
(practice)."""

LEFT = 1
"""Stitches left in each wedge, drawn together with the tail."""


def draw(wanted: Wanted) -> Drawing:
    """The sides are a multiple of the crown's wedges, each of which ends on one stitch."""
    knit, band, head = wanted.knit, wanted.bands[BRIM], wanted.measures["head"]
    count = WEDGES * max(nearest(knit.across(wanted.cm("head")) / WEDGES), 1)
    crown = knit.along(CROWN * head)
    sides = knit.along(HEIGHT * head - band.depth_cm) - crown
    each = count // WEDGES - LEFT
    if sides < 1 or each < 1:
        raise Impossible("nothing left", "the head leaves nothing between brim and crown")
    if each > crown:
        raise Impossible("too steep", "the crown would lose more than a stitch a wedge each round")
    head_of(wanted)
    brim = edge_band("brim", "band", band, knit.wide(count), count, in_round=True, copies=1)
    edges = edging(cast_on=brim is None, cast_off=False)
    side = KnitRun(sides, count, count)
    body = piece("sides", "body", (side,), knit, in_round=True, edges=edges)
    run = KnitRun(crown, count - WEDGES, LEFT * WEDGES)
    top = piece(
        "crown",
        "crown",
        (run,),
        knit,
        in_round=True,
        edges="none",
        words=_crown(run, count, each),
    )
    places = (Across("head", ("sides",)),)
    return Drawing(((brim,) if brim else ()) + (body, top), places=places)


def _crown(run: KnitRun, count: int, each: int) -> tuple[str, ...]:
    """The first round already loses a stitch in each wedge, so that its run begins below them."""
    spacing = even_spacing(each, run.rows)
    spread = spacing_text(spacing, "round", turns_of(spacing, run.worked, WEDGES))
    rest = spacing[0][1] - 1
    after = f", then work {counted(rest, 'round')} more" if rest else ""
    return (
        f"Place a marker after every {count // WEDGES} stitches and decrease one before each "
        f"marker on {spread}: {LEFT * WEDGES} stitches{after}.",
        f"Draw the yarn through the {LEFT * WEDGES} stitches that are left.",
    )


CONSTRUCTION = Construction(
    word="hat",
    title="Hat",
    measures=("head",),
    draw=draw,
    choices={},
    sizes={},
    eases=("head",),
    bands={BRIM: 5.0},
)
