"""The scarf: one straight piece in one pattern from end to end."""

from app.craft.constructions.bands import band_count
from app.craft.constructions.drawing import Across, Along, Construction, Drawing, KnitRun, Wanted
from app.craft.constructions.pieces import piece
from app.craft.constructions.wanting import BAND_PATTERNS


def draw(wanted: Wanted) -> Drawing:
    """A rectangle of `width` by `length`; its count is a multiple of the pattern's."""
    knit, pattern = wanted.knit, wanted.choices["pattern"]
    count = band_count(knit.across(wanted.cm("width")), pattern, in_round=False)
    run = KnitRun(knit.along(wanted.cm("length"), 2), count, count, pattern)
    made = piece("scarf", "piece", (run,), knit)
    places = (Across("width", ("scarf",)), Along("length", ("scarf",)))
    return Drawing((made,), places=places)


CONSTRUCTION = Construction(
    word="scarf",
    title="Scarf",
    measures=(),
    draw=draw,
    choices={"pattern": tuple(reversed(BAND_PATTERNS))},
    sizes={"width": (22.0, 4.0), "length": (170.0, 20.0)},
)
