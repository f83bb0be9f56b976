"""The yarn in the edges of a piece: its cast-on or picked-up row, its cast-off, its seams.

A seam is two edges, so each piece counts half of those that are sewn: of both its sides once their
length, of its last row half. What is grafted or drawn together takes a tail, and is no edge.
"""

import re
from itertools import pairwise

from app.book.gauge import Gauge
from app.book.plan import Part
from app.book.shape import Run
from app.craft.figure import Figure
from app.craft.working import Step

LONG_TAIL = 3.3
"""Yarn of a long-tail cast-on beside its row, in widths of the piece: 3, + 10 % (practice)."""

CAST_OFF_ROWS = 1.15
"""Yarn of an ordinary cast-off in rows: 1.0 to 1.3 (practice)."""

STRETCHY_ROWS = 2.0
"""Yarn of a stretchy or picot cast-off in rows: 1.5 to 2.5 (practice)."""

SEAM = 2.0
"""Yarn of a seam in lengths of it (practice)."""

ONE_SIDED = re.compile(r"(left and right )?fronts?\b", re.IGNORECASE)
"""What a pair is called that is sewn at one side only."""

EDGES_SHARE = 0.20
"""Standard uncertainty of the yarn in edges and seams, as a share (practice)."""


def edges(part: Part, runs: tuple[Run, ...], gauge: Gauge, loop: Figure) -> Figure:
    """Metres in the edges of one copy, from the yarn in a stitch in cm."""
    metres = cast_on_m(part, runs, gauge, loop) + cast_off_m(part, runs, loop)
    metres += SEAM * seam_m(part, runs, gauge)
    if not metres:
        return Figure(0.0, "m")
    return Figure(metres, "m", {"yarn in edges and seams": metres * EDGES_SHARE})


def cast_on_m(part: Part, runs: tuple[Run, ...], gauge: Gauge, loop: Figure) -> float:
    """Metres in the first edge: a row, and the long tail unless it is picked up."""
    if not runs or not (_cast_on(part) or _picked_up(part)):
        return 0.0
    row = runs[0].stitches * loop.value / 100
    tail = 0.0 if _picked_up(part) else LONG_TAIL * runs[0].stitches / gauge.stitches / 10
    return _ends(runs[0]) * (row + tail)


def cast_off_m(part: Part, runs: tuple[Run, ...], loop: Figure) -> float:
    """Metres in the cast-off, of the last row and on the way to it."""
    rows = _cast_off_rows(part) * (_ends(runs[-1]) if runs else 1)
    return rows * cast_off_stitches(part, runs) * loop.value / 100


def cast_off_stitches(part: Part, runs: tuple[Run, ...]) -> int:
    """Stitches cast off in one copy: those of the last row; those fewer in a run than the one
    before it ended with, at an armhole or a neck; and the steps of a shoulder."""
    if not runs or not _cast_off(part):
        return 0
    at_once = sum(max(a.stitches_to - b.stitches, 0) for a, b in pairwise(runs))
    steps = sum(_steps(run) for run in runs) if _sewn(part) else 0
    return runs[-1].stitches_to + at_once + steps


def seam_m(part: Part, runs: tuple[Run, ...], gauge: Gauge) -> float:
    """Half the length of the edges of one copy that are sewn, in m."""
    if not _sewn(part):
        return 0.0
    sides = 1 if part.copies == 2 and ONE_SIDED.match(part.name) else 2
    rows = sum(run.rows for run in runs)
    last = runs[-1].stitches_to if runs and _cast_off(part) else 0
    return (sides * rows / gauge.rows + last / gauge.stitches) / 20


def edge_step(part: Part, found: Figure) -> Step:
    """The working of `edges`."""
    told = (
        "picked-up row" if _picked_up(part) else "",
        "cast-on row and tail of 3.3 × the width" if _cast_on(part) else "",
        f"cast-off of {_cast_off_rows(part):g} rows" if _cast_off(part) else "",
    )
    how = ", ".join(one for one in told if one)
    how += "; seams of 2 × their length, half of each counted here" if _sewn(part) else ""
    source = "common practice, no source"
    return Step("Edges", how, found.value, "m", found.u, source, "practice")


def _cast_on(part: Part) -> bool:
    return part.edges.startswith("cast on")


def _picked_up(part: Part) -> bool:
    return part.edges.startswith("picked up")


def _cast_off(part: Part) -> bool:
    return "off" in part.edges


def _cast_off_rows(part: Part) -> float:
    return STRETCHY_ROWS if "stretchy" in part.edges else CAST_OFF_ROWS


def _ends(run: Run) -> int:
    """A yarn held double is cast on and off double; it is sewn with one end."""
    return run.strands[0].ends if run.strands else 1


def _sewn(part: Part) -> bool:
    return "seams" in part.edges and not part.in_round


def _steps(run: Run) -> int:
    """More than a stitch at each end of a row is cast off, not decreased."""
    fewer = run.stitches - run.stitches_to
    return fewer if fewer > 2 * run.rows else 0
