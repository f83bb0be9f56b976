"""The rows of a piece as they are drawn: bands of one yarn, in cm, to scale."""

from collections.abc import Iterator
from dataclasses import dataclass

from app.book.gauge import Gauge
from app.book.plan import Part, Worked
from app.book.shape import Run
from app.planning.places import in_round

AS_WORKED = Worked()


@dataclass(frozen=True, slots=True)
class Thread:
    """A yarn working in a row: its role, its share of the row, its skein; None where none is
    there yet."""

    role: str
    share: float
    holding_id: str | None


@dataclass(frozen=True, slots=True)
class Knit:
    """What a row is knit with, and whether it has been knit."""

    threads: tuple[Thread, ...]
    done: bool = False


@dataclass(frozen=True, slots=True)
class Band:
    """Rows `first` to `last` of a piece, all knit with the same. `edge` goes up its side: (height
    above the piece's lower edge, width of the piece as it lies there), both in cm."""

    first: int
    last: int
    knit: Knit
    edge: tuple[tuple[float, float], ...]


@dataclass(frozen=True, slots=True)
class Scale:
    """Cm of width in a stitch, as it lies flat, and of length in a row."""

    stitch: float
    row: float


def scale_of(part: Part, gauge: Gauge) -> Scale:
    """The finished size of a stitch and a row; of a tube, half its width is seen."""
    worked = part.worked or AS_WORKED
    stitch = 10 / gauge.stitches * worked.width_pct / 100
    return Scale(stitch / (2 if in_round(part) else 1), 10 / gauge.rows * worked.length_pct / 100)


def bands(runs: tuple[Run, ...], knit: list[Knit], scale: Scale) -> tuple[Band, ...]:
    """The rows of a piece with what each is knit with, joined to bands wherever that is the same;
    from the cast-on up."""
    found: list[Band] = []
    for row, (run, place) in enumerate(_rows(runs)):
        begun, ended = (_width(run, place + step) * scale.stitch for step in (0, 1))
        side = ((row * scale.row, begun), ((row + 1) * scale.row, ended))
        if found and found[-1].knit == knit[row]:
            found[-1] = _longer(found[-1], row + 1, side, straight=place > 0)
        else:
            found.append(Band(row + 1, row + 1, knit[row], side))
    return tuple(found)


def upside_down(drawn: tuple[Band, ...]) -> tuple[Band, ...]:
    """The bands of a piece that is worked from its upper edge down."""
    height = drawn[-1].edge[-1][0]
    return tuple(
        Band(one.first, one.last, one.knit, tuple((height - up, wide) for up, wide in one.edge))
        for one in drawn
    )


def row_stitches(run: Run, place: int) -> float:
    """Stitches in a row of a run that goes evenly from one count to another."""
    return _width(run, place + 0.5)


def _rows(runs: tuple[Run, ...]) -> Iterator[tuple[Run, int]]:
    return ((run, place) for run in runs for place in range(run.rows))


def _width(run: Run, along: float) -> float:
    return run.stitches + (run.stitches_to - run.stitches) * along / run.rows


def _longer(
    band: Band, last: int, side: tuple[tuple[float, float], tuple[float, float]], straight: bool
) -> Band:
    """The band with one row more; in a run only its end moves, a new run may begin with a step."""
    edge = band.edge
    if straight and len(edge) > 1:
        edge = edge[:-1]
    elif side[0] != edge[-1]:
        edge = (*edge, side[0])
    return Band(band.first, last, band.knit, (*edge, side[1]))
