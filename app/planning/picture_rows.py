"""The rows of a piece as they are drawn: bands of one yarn, cut from its outline, in cm."""

from dataclasses import dataclass, replace
from itertools import groupby

from app.book.gauge import Gauge
from app.book.plan import Part, Worked
from app.book.shape import Run
from app.planning.picture_outline import Corners, strip, without_straight
from app.planning.places import in_round

AS_WORKED = Worked()


@dataclass(frozen=True, slots=True)
class Thread:
    """A yarn working in a row: its role, its share of the row, its skein, and while it has none
    the yarn that is meant for it, if one was chosen. `colour` is that of the row where the colour
    of its skein runs from one into another."""

    role: str
    share: float
    holding_id: str | None
    yarn_id: str | None = None
    colour: str = ""


@dataclass(frozen=True, slots=True)
class Knit:
    """What a row is knit with, and whether it has been knit."""

    threads: tuple[Thread, ...]
    done: bool = False


@dataclass(frozen=True, slots=True)
class Band:
    """Rows `first` to `last` of a piece, all knit with the same. `begun` and `ended` are how high
    above the lower edge the first begins and the last ends, in cm: a piece worked from the top
    goes down. `corners` are its outline on the piece."""

    first: int
    last: int
    knit: Knit
    begun: float
    ended: float
    corners: Corners


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


def outline_of(runs: tuple[Run, ...], scale: Scale) -> Corners:
    """The outline of a piece whose sides are alike, from the middle of its cast-on."""
    right, row = [], 0
    for run in runs:
        right.append((run.stitches * scale.stitch / 2, row * scale.row))
        row += run.rows
        right.append((run.stitches_to * scale.stitch / 2, row * scale.row))
    return without_straight((*right, *((-x, y) for x, y in reversed(right))))


def fabrics(
    runs: tuple[Run, ...], outline: Corners, over: bool = False
) -> tuple[tuple[str, Corners], ...]:
    """The stitch patterns of a piece and the part of its outline each is worked over."""
    height, rows = max(y for _, y in outline), sum(run.rows for run in runs)
    found, row = [], 0
    for pattern, alike in groupby(runs, key=lambda run: run.pattern):
        until = row + sum(run.rows for run in alike)
        ends = [height * (1 - at / rows if over else at / rows) for at in (row, until)]
        found.append((pattern, strip(outline, min(ends), max(ends))))
        row = until
    return tuple(found)


def bands(knit: list[Knit], outline: Corners, over: bool = False) -> tuple[Band, ...]:
    """The rows of a piece with what each is knit with, joined to bands wherever that is the same;
    `over` where it is worked from its upper edge down."""
    height = max(y for _, y in outline)
    each, found, first = height / len(knit), [], 1
    for same, alike in groupby(knit):
        last = first + sum(1 for _ in alike) - 1
        ends = [(height - each * row if over else each * row) for row in (first - 1, last)]
        corners = strip(outline, min(ends), max(ends))
        found.append(Band(first, last, same, ends[0], ends[1], corners))
        first = last + 1
    return tuple(found)


def by_skein(bands: tuple[Band, ...]) -> tuple[Band, ...]:
    """The bands joined wherever the skeins are the same, though their colour runs."""
    found: list[Band] = []
    for band in bands:
        plain = replace(band, knit=_without_colour(band.knit))
        if found and found[-1].knit == plain.knit:
            found[-1] = replace(found[-1], last=band.last, ended=band.ended)
        else:
            found.append(plain)
    return tuple(found)


def _without_colour(knit: Knit) -> Knit:
    return replace(knit, threads=tuple(replace(one, colour="") for one in knit.threads))
