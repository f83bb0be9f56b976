"""From how a part was described to its rows: the schedule every need follows from."""

from dataclasses import dataclass, replace

from app.book.gauge import Gauge
from app.book.plan import Worked
from app.book.shape import Counted, Measured, Rectangle, Run, Runs, Shape, Strand, Trapezoid

SAME_SIZE = Worked()


@dataclass(frozen=True, slots=True)
class Rows:
    """Rows of a run that are knit in the same yarns. They go evenly from one count to another as
    the run does, so the stitches at their ends need not be whole."""

    rows: int
    stitches: float
    stitches_to: float
    pattern: str
    strands: tuple[Strand, ...]


AnyRun = Run | Rows


def schedule(shape: Shape, gauge: Gauge, worked: Worked | None = None) -> tuple[Run, ...]:
    """The runs of one piece of that shape; none for a shape that only states an amount of yarn.

    A measured shape is the finished one: where the piece changes its size afterwards (`worked`),
    its stitches are those of the size off the needles, and so is the gauge. Counts stand as they
    are.

    Shaping is in pairs, so a trapezoid ends on the nearest count that is an even number of
    stitches away from the one it began with.
    """
    change = worked or SAME_SIZE
    match shape:
        case Runs():
            return shape.runs
        case Counted():
            return (Run(shape.rows, shape.stitches, shape.stitches),)
        case Rectangle():
            stitches = _across(shape.width_mm, gauge, change)
            return (Run(_along(shape.length_mm, gauge, change), stitches, stitches),)
        case Trapezoid():
            begun = _across(shape.width_mm, gauge, change)
            wanted = shape.width_to_mm * gauge.stitches / change.width_pct
            pairs = round((wanted - begun) / 2)
            return (Run(_along(shape.length_mm, gauge, change), begun, begun + 2 * pairs),)
        case Measured():
            sides = Trapezoid(shape.width_mm, shape.width_to_mm, shape.length_mm)
            (run,) = schedule(sides, gauge, worked)
            return (replace(run, pattern=shape.pattern, strands=shape.strands),)
        case _:
            return ()


def stitches_in(run: AnyRun) -> float:
    """Stitches worked in a run that goes evenly from one count to another."""
    return run.rows * (run.stitches + run.stitches_to) / 2


def row_stitches(run: AnyRun, row: float) -> float:
    """Stitches in a row of a run, from 0, that goes evenly from one count to another."""
    return run.stitches + (run.stitches_to - run.stitches) * (row + 0.5) / run.rows


def alike_together(runs: tuple[AnyRun, ...]) -> tuple[AnyRun, ...]:
    """Runs of one pattern in the same yarns as one run of as many stitches: what a whole piece
    takes does not ask in which order its rows are knit."""
    found: dict[tuple[str, tuple[Strand, ...]], tuple[int, float]] = {}
    for run in runs:
        rows, stitches = found.get((run.pattern, run.strands), (0, 0.0))
        found[run.pattern, run.strands] = rows + run.rows, stitches + stitches_in(run)
    return tuple(
        Rows(rows, stitches / rows, stitches / rows, *alike)
        for alike, (rows, stitches) in found.items()
        if rows
    )


def by_role(runs: tuple[AnyRun, ...]) -> dict[str, float]:
    """Stitches of yarn each role works: its share of every run, times the ends held together."""
    worked: dict[str, float] = {}
    for run in runs:
        for strand in run.strands:
            took = stitches_in(run) * strand.share * strand.ends
            worked[strand.role] = worked.get(strand.role, 0.0) + took
    return worked


def _across(width_mm: int, gauge: Gauge, change: Worked) -> int:
    return round(width_mm * gauge.stitches / change.width_pct)


def _along(length_mm: int, gauge: Gauge, change: Worked) -> int:
    return round(length_mm * gauge.rows / change.length_pct)
