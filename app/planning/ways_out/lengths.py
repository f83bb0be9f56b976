"""Parts whose length is free, and the same parts shorter."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from app.book.gauge import Gauge
from app.book.plan import Part
from app.book.shape import Counted, Measured, Rectangle, Run, Runs, Shape, Trapezoid
from app.book.words import Place
from app.planning.places import place_of
from app.planning.schedule import schedule
from app.planning.ways_out.situation import Situation

FREE: tuple[tuple[str, tuple[Place, ...]], ...] = (
    ("body", ("body", "back", "front")),
    ("sleeves", ("sleeve",)),
    ("piece", ("piece",)),
)
"""Places whose length is a matter of taste; those that must stay as long as each other together."""

STEP_MM = 10


@dataclass(frozen=True, slots=True)
class FreeLength:
    """Parts that are made shorter together: their name, and the length in mm of the shortest."""

    word: str
    parts: tuple[Part, ...]
    length_mm: float

    @property
    def several(self) -> bool:
        """True for parts that are spoken of as "they"."""
        return sum(one.copies for one in self.parts) > 1


def free_lengths(situation: Situation) -> Iterator[FreeLength]:
    """Parts of a short yarn whose length nothing else fixes, with rows still to be left out."""
    for word, places in FREE:
        alike = [one for one in situation.parts if place_of(one) in places]
        open_ones = all(_may_change(situation, one) for one in alike)
        if alike and open_ones and any(situation.short_of(one) for one in alike):
            lengths = [length_mm(one, _gauge(situation, one)) for one in alike]
            yield FreeLength(word, tuple(alike), min(lengths))


def shorter(situation: Situation, free: FreeLength, mm: float) -> list[Part]:
    """The same parts, each `mm` shorter."""
    return [
        replace(one, shape=shortened(one.shape, _gauge(situation, one), mm)) for one in free.parts
    ]


def length_mm(part: Part, gauge: Gauge) -> float:
    """How long a part is, in mm, by its rows."""
    return 100 * sum(run.rows for run in schedule(part.shape, gauge, part.worked)) / gauge.rows


def shortened(shape: Shape, gauge: Gauge, mm: float) -> Shape:
    """A shape `mm` shorter, in an even number of rows; of several runs the longest gives them."""
    rows = even_rows(gauge, mm)
    match shape:
        case Rectangle() | Trapezoid() | Measured():
            return replace(shape, length_mm=round(shape.length_mm - mm))
        case Counted():
            return replace(shape, rows=shape.rows - rows)
        case Runs():
            at = longest(shape.runs)
            runs = list(shape.runs)
            runs[at] = replace(runs[at], rows=runs[at].rows - rows)
            return replace(shape, runs=tuple(runs))
        case _:
            raise ValueError("a bare amount of yarn has no length")


def even_rows(gauge: Gauge, mm: float) -> int:
    """Rows in a length, an even number of them."""
    return 2 * round(mm * gauge.rows / 200)


def longest(runs: tuple[Run, ...]) -> int:
    """The place of the run with most rows; of two as long, one that is straight."""
    return max(range(len(runs)), key=lambda i: (runs[i].rows, _straight(runs[i])))


def most_mm(situation: Situation, free: FreeLength, share: float) -> int:
    """How much shorter they may become, in whole steps: at most a share of their length, and of a
    run at most half."""
    most = free.length_mm * share
    for part in free.parts:
        gauge = _gauge(situation, part)
        if isinstance(part.shape, Runs):
            rows = part.shape.runs[longest(part.shape.runs)].rows
            most = min(most, 100 * rows / 2 / gauge.rows)
    steps = int(most // STEP_MM) * STEP_MM
    while steps > 0 and not all(_has_room(situation, one, steps) for one in free.parts):
        steps -= STEP_MM
    return steps


def rows_to_spare(situation: Situation, part: Part) -> int | None:
    """Rows of a part that is begun which may be left out without a change to those done: only a
    straight stretch has any. None for a part that is not begun."""
    if not situation.begun(part):
        return None
    runs = schedule(part.shape, _gauge(situation, part), part.worked)
    at = longest(runs)
    end = sum(run.rows for run in runs[: at + 1])
    spare = min(runs[at].rows, end - situation.rows_done(part))
    return max(0, spare) if _straight(runs[at]) else 0


def _has_room(situation: Situation, part: Part, mm: int) -> bool:
    spare = rows_to_spare(situation, part)
    return spare is None or even_rows(_gauge(situation, part), mm) < spare


def _straight(run: Run) -> bool:
    return run.stitches == run.stitches_to


def _may_change(situation: Situation, part: Part) -> bool:
    knit = isinstance(part.shape, Counted | Rectangle | Trapezoid | Measured | Runs)
    known = knit and situation.needs[part.id].gauge is not None
    if not known or not situation.begun(part):
        return known
    return any(situation.done.values()) and rows_to_spare(situation, part) != 0


def _gauge(situation: Situation, part: Part) -> Gauge:
    gauge = situation.needs[part.id].gauge
    assert gauge is not None
    return gauge
