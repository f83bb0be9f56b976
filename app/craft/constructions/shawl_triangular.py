"""The triangular shawl: from its point up, wider by a stitch at each end as it grows."""

from app.craft.constructions.drawing import (
    Across,
    Along,
    Construction,
    Drawing,
    Impossible,
    KnitRun,
    Wanted,
)
from app.craft.constructions.pieces import piece

POINT = 2
"""Stitches at the point."""


def draw(wanted: Wanted) -> Drawing:
    """`span` along the top edge, `depth` from there to the point. Impossible where it would have to
    grow by more than a stitch at each end of every row."""
    knit = wanted.knit
    top, rows = knit.pairs(wanted.cm("span")), knit.along(wanted.cm("depth"), 2)
    if top - POINT > 2 * rows:
        raise Impossible(
            "too steep", "the shawl is too wide for its depth to be shaped at its ends"
        )
    run = KnitRun(rows, POINT, top)
    made = piece("shawl", "piece", (run,), knit, edges="cast on, stretchy cast-off")
    places = (Across("span", ("shawl",), rows), Along("depth", ("shawl",)))
    return Drawing((made,), places=places)


CONSTRUCTION = Construction(
    word="shawl, triangular",
    title="Triangular shawl",
    measures=(),
    draw=draw,
    choices={},
    sizes={"span": (160.0, 20.0), "depth": (75.0, 8.0)},
)
