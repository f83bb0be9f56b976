"""The cowl: a tube in one pattern, worn around the neck."""

from app.craft.constructions.bands import band_count
from app.craft.constructions.drawing import Across, Along, Construction, Drawing, KnitRun, Wanted
from app.craft.constructions.pieces import piece
from app.craft.constructions.wanting import BAND_PATTERNS


def draw(wanted: Wanted) -> Drawing:
    """A tube `around` by `height`; its count is a multiple of the pattern's."""
    knit, pattern = wanted.knit, wanted.choices["pattern"]
    count = band_count(knit.across(wanted.cm("around")), pattern, in_round=True)
    run = KnitRun(knit.along(wanted.cm("height")), count, count, pattern)
    made = piece("cowl", "piece", (run,), knit, in_round=True)
    places = (Across("around", ("cowl",)), Along("height", ("cowl",)))
    return Drawing((made,), places=places)


CONSTRUCTION = Construction(
    word="cowl",
    title="Cowl",
    measures=(),
    draw=draw,
    choices={"pattern": tuple(reversed(BAND_PATTERNS))},
    sizes={"around": (66.0, 6.0), "height": (28.0, 4.0)},
)
