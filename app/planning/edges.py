"""The yarn in the edges of a piece: its cast-on or picked-up row, its cast-off, its seam."""

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

EDGES_SHARE = 0.20
"""Standard uncertainty of the yarn in edges and seams, as a share (practice)."""


def edges(part: Part, runs: tuple[Run, ...], gauge: Gauge, loop: Figure) -> Figure:
    """Metres in the edges of one copy, from the yarn in a stitch in cm."""
    metres = cast_on_m(part, runs, gauge, loop) + cast_off_m(part, runs, loop)
    metres += SEAM * _seam_m(part, runs, gauge)
    if not metres:
        return Figure(0.0, "m")
    return Figure(metres, "m", {"yarn in edges and seams": metres * EDGES_SHARE})


def cast_on_m(part: Part, runs: tuple[Run, ...], gauge: Gauge, loop: Figure) -> float:
    """Metres in the first edge: a row, and the long tail unless it is picked up."""
    if part.edges == "none" or not runs:
        return 0.0
    row = runs[0].stitches * loop.value / 100
    tail = 0.0 if _picked_up(part) else LONG_TAIL * runs[0].stitches / gauge.stitches / 10
    return row + tail


def cast_off_m(part: Part, runs: tuple[Run, ...], loop: Figure) -> float:
    """Metres in the cast-off."""
    if part.edges == "none" or not runs:
        return 0.0
    return _cast_off_rows(part) * runs[-1].stitches_to * loop.value / 100


def edge_step(part: Part, found: Figure) -> Step:
    """The working of `edges`."""
    how = "picked-up row" if _picked_up(part) else "cast-on row and tail of 3.3 × the width"
    how += f", cast-off of {_cast_off_rows(part):g} rows"
    how += "; seam of 2 × its length" if _sewn(part) else ""
    source = "common practice, no source"
    return Step("Edges", how, found.value, "m", found.u, source, "practice")


def _picked_up(part: Part) -> bool:
    return "picked up" in part.edges


def _cast_off_rows(part: Part) -> float:
    return STRETCHY_ROWS if "stretchy" in part.edges else CAST_OFF_ROWS


def _sewn(part: Part) -> bool:
    return "seams" in part.edges and not part.in_round


def _seam_m(part: Part, runs: tuple[Run, ...], gauge: Gauge) -> float:
    return sum(run.rows for run in runs) / gauge.rows / 10 if _sewn(part) else 0.0
