"""How the yarns of a piece work together: held double, in stripes, stranded, one held along."""

from dataclasses import dataclass, replace
from typing import Literal, get_args

from app.book.gauge import Gauge
from app.book.plan import Worked
from app.book.shape import Counted, Rectangle, Run, Runs, Shape, Strand, Trapezoid
from app.book.swatch import STOCKING_STITCH
from app.planning.beyond import STRANDED
from app.planning.schedule import schedule

MAIN, SECOND = "main", "contrast"
"""The roles of the yarn of a piece and of a second one beside it."""

Use = Literal["", "stripes", "stranded", "held along"]
USES: tuple[Use, ...] = get_args(Use)


@dataclass(frozen=True, slots=True)
class KnitWith:
    """The stitch `pattern` (empty: as the rows say), the `ends` of the yarn held together, how a
    second yarn is used, and the share of the stitches it takes in stripes or stranded, in %."""

    pattern: str = ""
    ends: int = 1
    use: Use = ""
    share_pct: float = 0.0

    @property
    def plain(self) -> bool:
        """True where one end of one yarn is knit in stocking stitch."""
        return not self.use and self.ends == 1 and self.pattern in ("", STOCKING_STITCH)


class NoGauge(ValueError):
    """Met where a measured piece must be counted and there is no gauge to count it at."""


def knit_shape(
    shape: Shape, knit: KnitWith, gauge: Gauge | None, worked: Worked | None = None
) -> Shape:
    """The shape with its yarns worked so: as it is where that is plain, else row by row at the
    gauge as it is now. NoGauge where it has to be counted and cannot be."""
    if knit.plain and not isinstance(shape, Runs):
        return shape
    if gauge is None and isinstance(shape, Rectangle | Trapezoid):
        raise NoGauge
    runs = schedule(shape, gauge or Gauge(1.0, 1.0), worked)
    return Runs(tuple(_knit(run, knit) for run in runs)) if runs else shape


def told_by(shape: Shape) -> KnitWith | None:
    """How the yarns of a shape are worked; None where its rows differ, or work them otherwise."""
    if not isinstance(shape, Runs):
        return KnitWith()
    patterns = {run.pattern for run in shape.runs}
    strands = {run.strands for run in shape.runs}
    pattern = patterns.pop() if len(patterns) == 1 else ""
    return _told(pattern, *strands.pop()) if len(strands) == 1 else None


def as_counted(shape: Shape) -> Shape:
    """Rows that are all alike as what they are: so many stitches by so many rows."""
    if not isinstance(shape, Runs) or len(shape.runs) != 1 or told_by(shape) is None:
        return shape
    (run,) = shape.runs
    straight = run.stitches == run.stitches_to and run.stitches and run.needle_mm is None
    return Counted(run.stitches, run.rows) if straight else shape


def _knit(run: Run, knit: KnitWith) -> Run:
    pattern = STRANDED if knit.use == "stranded" else knit.pattern or run.pattern
    return replace(run, pattern=pattern, strands=_strands(knit))


def _strands(knit: KnitWith) -> tuple[Strand, ...]:
    if not knit.use:
        return (Strand(MAIN, 1.0, knit.ends),)
    if knit.use == "held along":
        return (Strand(MAIN, 1.0, knit.ends), Strand(SECOND))
    share = knit.share_pct / 100
    return (Strand(MAIN, 1 - share, knit.ends), Strand(SECOND, share, knit.ends))


def _told(pattern: str, *strands: Strand) -> KnitWith | None:
    """The way that gives these strands, if there is one."""
    ends = strands[0].ends if strands else 1
    share = round(100 * strands[-1].share, 6) if strands else 0.0
    two: Use = "stranded" if pattern == STRANDED else "stripes"
    ways = (
        KnitWith(pattern, ends),
        KnitWith(pattern, ends, "held along"),
        KnitWith(pattern, ends, two, share),
    )
    return next((one for one in ways if _alike(_strands(one), strands)), None)


def _alike(made: tuple[Strand, ...], strands: tuple[Strand, ...]) -> bool:
    return len(made) == len(strands) and all(
        (one.role, one.ends) == (other.role, other.ends) and abs(one.share - other.share) < 1e-9
        for one, other in zip(made, strands, strict=True)
    )
