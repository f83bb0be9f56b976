"""The half-round shawl: from the middle of the neck outwards, in wedges that grow alike."""

from dataclasses import replace
from math import cos, pi, sin

from app.craft.constructions.drawing import (
    Along,
    Construction,
    Drawing,
    Impossible,
    KnitRun,
    Point,
    Wanted,
    nearest,
)
from app.craft.constructions.pieces import piece
from app.craft.shaping import counted, even_spacing_flat, spacing_text, turns_of

WEDGES = 8
LEAST_BEGUN = 4
"""Stitches at the neck, at least; a few more make the count at the edge come out."""

CORNERS = 90
"""Straight pieces the round edge is drawn in."""


def draw(wanted: Wanted) -> Drawing:
    """`radius` from the neck to the edge. A row at radius r is πr long, so the count grows evenly
    and the fabric is half a disc. Impossible where a wedge would grow on more than every second
    row."""
    knit = wanted.knit
    rows = knit.along(wanted.cm("radius"), 2)
    around = knit.across(pi * knit.long(rows))
    each = nearest((around - 2 * LEAST_BEGUN) / WEDGES - 0.5)
    if not 0 < each <= rows // 2:
        raise Impossible("too steep", "a half-round shawl of this gauge cannot lie flat")
    begun = nearest((around - WEDGES * each) / 2)
    last = begun + WEDGES * each
    run = KnitRun(rows, begun, last)
    spacing = even_spacing_flat(each, rows)
    turns = turns_of(spacing, run.worked, WEDGES)
    words = (
        f"Cast on {begun} stitches and mark {WEDGES} wedges as they grow.",
        f"Increase one stitch in every wedge on "
        f"{spacing_text(spacing, 'row', turns)}: {last} stitches after "
        f"{counted(rows, 'row')}.",
    )
    made = piece(
        "shawl",
        "piece",
        (run,),
        knit,
        edges="cast on, stretchy cast-off",
        words=words,
        drawn=half_disc(knit.long(rows)),
    )
    return Drawing((replace(made, rings=True),), places=(Along("radius", ("shawl",)),))


def half_disc(radius_cm: float) -> tuple[Point, ...]:
    """The polygon of half a disc, its straight edge on top."""
    turns = (pi * (1 + step / CORNERS) for step in range(CORNERS + 1))
    return tuple((radius_cm * cos(turn), radius_cm * (1 + sin(turn))) for turn in turns)


CONSTRUCTION = Construction(
    word="shawl, half-round",
    title="Half-round shawl",
    measures=(),
    draw=draw,
    choices={},
    sizes={"radius": (70.0, 8.0)},
)
