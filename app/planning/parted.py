"""Parts of a drawn garment that no longer meet, since one was changed and the other was not."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from app.book.gauge import Gauge
from app.book.plan import Part, Plan
from app.book.shape import Run, Runs
from app.craft.constructions.bands import band_count
from app.craft.constructions.drawing import Drawing, nearest
from app.craft.constructions.meets import Meet, meets, underarm_row
from app.planning.design import drawing_of, part_id
from app.planning.picture_drawn import same_runs
from app.planning.schedule import schedule

BANDS = ("front bands",)
"""Bands picked up along the ends of rows from end to end, which can be drawn to match."""


@dataclass(frozen=True, slots=True)
class Parted:
    """A part that was drawn to meet another, which has so many `rows` more now, or other stitches;
    `matched` is the part as it would meet it again, None where it must be drawn anew."""

    part: Part
    other: Part
    rows: int
    matched: Part | None


def parted(plan: Plan, parts: list[Part]) -> tuple[Parted, ...]:
    """Each part of a drawn plan that meets one that was changed; none where it cannot be drawn."""
    if plan.design is None or plan.gauge is None:
        return ()
    try:
        drawing = drawing_of(plan.design, plan.gauge)
    except ValueError:
        return ()
    return tuple(_Compared(plan, plan.gauge, drawing, parts).all())


class _Compared:
    """The parts of a plan beside the pieces they were drawn as."""

    def __init__(self, plan: Plan, gauge: Gauge, drawing: Drawing, parts: list[Part]) -> None:
        by_id = {part.id: part for part in parts}
        ids = {one.name: part_id(plan.id, one.name) for one in drawing.pieces}
        self.drawing, self.gauge = drawing, gauge
        self.pieces = {one.name: one for one in drawing.pieces}
        self.parts = {name: by_id[key] for name, key in ids.items() if key in by_id}
        self.changed = {
            name for name, part in self.parts.items() if not same_runs(part, self.pieces[name])
        }

    def all(self) -> Iterator[Parted]:
        for name, part in self.parts.items():
            if name in self.changed:
                continue
            off = {
                one.piece: self._rows_more(one.piece)
                for one in meets(self.drawing, self.pieces[name])
                if one.piece in self.changed and self._differs(one)
            }
            matched = self._matched(name, sum(off.values())) if name in BANDS else None
            for other, rows in off.items():
                yield Parted(part, self.parts[other], rows, matched)

    def _runs(self, name: str) -> tuple[Run, ...]:
        part = self.parts[name]
        return schedule(part.shape, part.gauge or self.gauge, part.worked)

    def _rows_more(self, name: str) -> int:
        return sum(run.rows for run in self._runs(name)) - self.pieces[name].rows

    def _differs(self, one: Meet) -> bool:
        was = tuple(Run(r.rows, r.stitches, r.stitches_to) for r in self.pieces[one.piece].runs)
        now = self._runs(one.piece)
        if one.by.endswith("above the arms"):
            below = underarm_row(self.drawing, one.piece)
            was = _above(was, below)
            now = _above(now, below + self._rows_more(one.piece))
        if one.by.startswith("rows"):
            return sum(run.rows for run in was) != sum(run.rows for run in now)
        return _counts(was) != _counts(now)

    def _matched(self, name: str, rows: int) -> Part | None:
        """The band with the stitches of so many rows more; None where they are none."""
        part, piece = self.parts[name], self.pieces[name]
        (run,) = piece.runs
        more = piece.knit.across(10 * rows / self.gauge.rows)
        count = band_count(nearest(run.stitches + more), run.pattern, piece.in_round)
        if count == run.stitches or not isinstance(part.shape, Runs):
            return None
        (old,) = part.shape.runs
        longer = replace(old, stitches=count, stitches_to=count)
        return replace(part, shape=replace(part.shape, runs=(longer,)))


def _above(runs: tuple[Run, ...], row: int) -> tuple[Run, ...]:
    """The runs that begin at that row or after it."""
    begun, kept = 0, []
    for run in runs:
        if begun >= row:
            kept.append(run)
        begun += run.rows
    return tuple(kept)


def _counts(runs: tuple[Run, ...]) -> list[tuple[int, int]]:
    return [(run.stitches, run.stitches_to) for run in runs]
