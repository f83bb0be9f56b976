"""A garment worked in one piece, folded as it is worn: its front, opened or closed, and its back.

Its rows stay level. A front is as wide as the back; what the neckline takes is taken from the front
alone.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from app.book.plan import Part
from app.book.shape import Run
from app.craft.constructions.drawing import DrawnPiece
from app.planning.needs import PartNeed
from app.planning.picture_drawn import same_runs
from app.planning.picture_outline import Corners, without_straight
from app.planning.picture_rows import Scale
from app.planning.places import in_round, place_of
from app.planning.schedule import schedule

View = Literal["", "front", "left front", "right front", "back"]

FOLDED = frozenset({"body", "yoke", "neck"})
"""Places that go round the trunk, where there is one of them; a hem does too."""

HEM = (0.75, 1.15)
"""How much of the stitches of a body its hem has."""

Levels = list[tuple[float, float, float]]
"""(height, width all around with the neckline, width of the neckline) in cm, from the bottom."""


@dataclass(frozen=True, slots=True)
class Fold:
    """How the parts of a garment are folded: those that are, and whether its front is opened."""

    parts: frozenset[str]
    opened: bool

    def views(self, part: Part) -> tuple[View, ...]:
        """What is seen of a part; a part that is not folded is seen once."""
        if part.id not in self.parts:
            return ("",)
        return ("left front", "right front", "back") if self.opened else ("front", "back")


def fold_of(needs: Iterable[PartNeed]) -> Fold:
    """Which parts of a plan are folded: those around a body that is joined into one yoke."""
    single = [one for one in needs if one.part.copies == 1 and one.gauge]
    by_place = {place_of(one.part): one for one in single}
    if not {"body", "yoke"} <= by_place.keys():
        return Fold(frozenset(), False)
    body = by_place["body"]
    around = [one for one in single if place_of(one.part) in FOLDED or _is_hem(one, body)]
    return Fold(frozenset(one.part.id for one in around), not in_round(body.part))


def _is_hem(one: PartNeed, body: PartNeed) -> bool:
    """Whether a band goes round a body, not up its front."""
    if place_of(one.part) != "band" or in_round(one.part) != in_round(body.part):
        return False
    share = _across(one) / (_across(body) or 1.0)
    return HEM[0] <= share <= HEM[1]


def _across(need: PartNeed) -> float:
    """Stitches along its lower edge."""
    runs = schedule(need.part.shape, need.gauge, need.part.worked) if need.gauge else ()
    return float(runs[0].stitches) if runs else 0.0


def folded(
    part: Part, runs: tuple[Run, ...], scale: Scale, drawn: DrawnPiece | None, view: View
) -> Corners:
    """The outline of what is seen of a part; half of an opened front has the garment's middle at
    0. `scale` is that of a stitch as it lies, of a tube half of it."""
    cm = scale.stitch * (2 if in_round(part) else 1)
    gaps = _gaps(runs, drawn if drawn and same_runs(part, drawn) else None)
    levels = _levels(runs, gaps, cm, scale.row)
    if place_of(part) == "yoke" and not any(gap for _, _, gap in levels):
        levels = eased(levels)
    return without_straight(_side(levels, view))


def _gaps(runs: tuple[Run, ...], drawn: DrawnPiece | None) -> list[tuple[int, int]]:
    if drawn is None:
        return [(0, 0) for _ in runs]
    return [(one.gap, one.gap_to) for one in drawn.runs]


def _levels(runs: tuple[Run, ...], gaps: list[tuple[int, int]], cm: float, row: float) -> Levels:
    found, at = [], 0
    for run, (gap, gap_to) in zip(runs, gaps, strict=True):
        found.append((at * row, (run.stitches + gap) * cm, gap * cm))
        at += run.rows
        found.append((at * row, (run.stitches_to + gap_to) * cm, gap_to * cm))
    return found


def eased(levels: Levels) -> Levels:
    """Stitches that are drawn in all round at once make no step: the fabric goes over from one
    width to the other as far below the row as above it, and holds as much."""
    steps = [at for at in range(1, len(levels) - 1, 2) if levels[at][1] != levels[at + 1][1]]
    reach = {at: _reach(levels, at) for at in steps}
    return [
        (up - reach[at] if at in reach else up + reach.get(at - 1, 0.0), wide, gap)
        for at, (up, wide, gap) in enumerate(levels)
    ]


def _reach(levels: Levels, at: int) -> float:
    """Half of the lower run or of the upper one, whichever is shorter."""
    before, after = levels[at][0] - levels[at - 1][0], levels[at + 2][0] - levels[at + 1][0]
    return min(before, after) / 2


def _side(levels: Levels, view: View) -> Corners:
    match view:
        case "left front":
            return _half(levels, -1)
        case "right front":
            return _half(levels, 1)
        case "back":
            return _whole([(up, wide, 0.0) for up, wide, _ in levels])
        case _:
            return _whole(levels)


def _whole(levels: Levels) -> Corners:
    right = [(wide / 4, up) for up, wide, _ in levels]
    inner = [(gap / 2, up) for up, _, gap in levels]
    opening = [one for one, after in pairwise([*inner, inner[-1]]) if one[0] or after[0]]
    down_and_up = [*reversed(opening), *((-x, up) for x, up in opening)]
    return (*right, *down_and_up, *((-x, up) for x, up in reversed(right)))


def _half(levels: Levels, side: int) -> Corners:
    outer = [(side * wide / 4, up) for up, wide, _ in levels]
    inner = [(side * gap / 2, up) for up, _, gap in levels]
    return (*outer, *reversed(inner))
