"""The blanket: a rectangle, and a border knit on around it with mitred corners."""

from app.craft.constructions.bands import along_edge, band_count
from app.craft.constructions.drawing import (
    Across,
    Band,
    Construction,
    Drawing,
    DrawnPiece,
    Impossible,
    Join,
    KnitRun,
    Places,
    Wanted,
    nearest,
)
from app.craft.constructions.pieces import piece
from app.craft.constructions.wanting import BAND_PATTERNS

BORDER = "border"
CORNERS = 4


def draw(wanted: Wanted) -> Drawing:
    """`width` by `length` with the border, which is picked up along all four edges."""
    knit, pattern, border = wanted.knit, wanted.choices["pattern"], wanted.bands[BORDER]
    wide = wanted.cm("width") - 2 * border.depth_cm
    long = wanted.cm("length") - 2 * border.depth_cm
    if min(wide, long) <= 0:
        raise Impossible("nothing left", "the border leaves nothing of the blanket")
    count = band_count(knit.across(wide), pattern, in_round=False)
    middle = piece("middle", "piece", (KnitRun(knit.along(long, 2), count, count, pattern),), knit)
    rows = border.knit.along(border.depth_cm)
    if not rows:
        return Drawing((middle,), places=_places(0.0))
    edge = 2 * (knit.wide(count) + knit.long(middle.rows))
    deep = 2 * border.knit.long(rows)
    return Drawing(*_with_border(middle, border, rows, edge), places=_places(knit.across(deep)))


def _places(borders: float) -> Places:
    return (Across("width", ("middle",), besides=borders),)


def _with_border(
    middle: DrawnPiece, border: Band, rows: int, edge_cm: float
) -> tuple[tuple[DrawnPiece, ...], tuple[Join, ...]]:
    wanted = border.knit.across(edge_cm)
    taken = max(nearest(wanted), CORNERS)
    more = 2 * CORNERS * nearest(border.knit.across(border.depth_cm))
    run = KnitRun(rows, taken, taken + more, border.pattern)
    words = (
        f"Pick up {taken} stitches around and mark the {CORNERS} corners.",
        f"Work {rows} rounds in {border.pattern}, increasing on both sides of each corner "
        f"{more // (2 * CORNERS)} times in all: {taken + more} stitches; cast off loosely.",
    )
    made = piece(
        "border",
        "band",
        (run,),
        border.knit,
        in_round=True,
        edges="picked up, stretchy cast-off",
        words=words,
    )
    return (middle, made), (along_edge("border", "picked up along", taken, wanted),)


CONSTRUCTION = Construction(
    word="blanket",
    title="Blanket",
    measures=(),
    draw=draw,
    choices={
        "pattern": tuple(reversed(BAND_PATTERNS)),
        f"{BORDER} pattern": ("garter stitch", "stocking stitch"),
    },
    sizes={"width": (100.0, 15.0), "length": (130.0, 20.0)},
    bands={BORDER: 4.0},
)
