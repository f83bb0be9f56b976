"""How the yarns of a piece work together: held double, in stripes, stranded, one held along."""

from dataclasses import dataclass, replace
from typing import Literal, get_args

from app.book.shape import Counted, Measured, Rectangle, Run, Runs, Shape, Strand, Trapezoid
from app.book.swatch import STOCKING_STITCH
from app.planning.beyond import STRANDED

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


def knit_shape(shape: Shape, knit: KnitWith) -> Shape:
    """The shape with its yarns worked so: as it is where that is plain; else what is measured
    stays measured, what is counted is told row by row, and an amount has no yarns to work."""
    match shape:
        case Runs():
            return Runs(tuple(_knit(run, knit) for run in shape.runs)) if shape.runs else shape
        case Counted() if not knit.plain:
            return Runs((_knit(Run(shape.rows, shape.stitches, shape.stitches), knit),))
        case Rectangle(width_mm=width) if not knit.plain:
            return _measured(Trapezoid(width, width, shape.length_mm), knit)
        case Trapezoid() if not knit.plain:
            return _measured(shape, knit)
        case _:
            return shape


def told_by(shape: Shape) -> KnitWith | None:
    """How the yarns of a shape are worked; None where its rows differ, or work them otherwise."""
    if isinstance(shape, Measured):
        return _told(shape.pattern, *shape.strands)
    if not isinstance(shape, Runs):
        return KnitWith()
    patterns = {run.pattern for run in shape.runs}
    strands = {run.strands for run in shape.runs}
    pattern = patterns.pop() if len(patterns) == 1 else ""
    return _told(pattern, *strands.pop()) if len(strands) == 1 else None


def as_described(shape: Shape) -> Shape:
    """A shape without its yarns: a measured one by its sizes, and rows that are all alike as what
    they are, so many stitches by so many rows. As it is where its yarns cannot be told."""
    if isinstance(shape, Measured) and told_by(shape):
        return _plain(shape)
    if not isinstance(shape, Runs) or len(shape.runs) != 1 or told_by(shape) is None:
        return shape
    (run,) = shape.runs
    straight = run.stitches == run.stitches_to and run.stitches and run.needle_mm is None
    return Counted(run.stitches, run.rows) if straight else shape


def _measured(shape: Trapezoid, knit: KnitWith) -> Measured:
    like = _knit(Run(1, 1, 1), knit)
    sizes = shape.width_mm, shape.width_to_mm, shape.length_mm
    return Measured(*sizes, like.pattern, like.strands)


def _plain(shape: Measured) -> Shape:
    if shape.width_mm == shape.width_to_mm:
        return Rectangle(shape.width_mm, shape.length_mm)
    return Trapezoid(shape.width_mm, shape.width_to_mm, shape.length_mm)


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
