"""What is asked of the small sums of a plan."""

from collections.abc import Iterable

from app.planning.small_sums import BORDER, FROM_END, HOLE, Asked, borders
from app.web.forms.reader import Reader

MOST_BUTTONS, MOST_STITCHES = 100, 5_000


def read_asked(reader: Reader, part_ids: Iterable[str]) -> Asked:
    """The question typed, every blank as is usual; it counts only where the reader is ok."""
    hole = reader.whole("hole", least=1, most=MOST_STITCHES)
    end = reader.whole("end", most=MOST_STITCHES)
    return Asked(
        buttons=reader.whole("buttons", least=1, most=MOST_BUTTONS),
        hole=HOLE if hole is None else hole,
        end=FROM_END if end is None else end,
        border=reader.choice("border", borders(), default=BORDER) or BORDER,
        part_id=reader.choice("part", ["", *part_ids], default="") or "",
        stitches_to=reader.whole("to", least=1, most=MOST_STITCHES),
    )
