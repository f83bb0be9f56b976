"""From runs to a piece: its outline in cm and its shaping in words."""

from collections.abc import Iterator
from itertools import pairwise

from app.craft.constructions.drawing import (
    DrawnPiece,
    Edging,
    Impossible,
    Knit,
    KnitRun,
    Place,
    Point,
)
from app.craft.shaping import shaping_text

Runs = tuple[KnitRun, ...]


def piece(
    name: str,
    place: Place,
    runs: Runs,
    knit: Knit,
    *,
    in_round: bool = False,
    copies: int = 1,
    half: bool = False,
    edges: Edging = "cast on and off",
    words: tuple[str, ...] | None = None,
    drawn: tuple[Point, ...] | None = None,
) -> DrawnPiece:
    """A piece of those runs, empty ones left out. `half`: the opening lies at its one edge, not in
    its middle; `drawn` is the outline where rows do not lie level. Impossible where a run has less
    than one stitch, or nothing is left to knit."""
    runs = tuple(run for run in runs if run.rows)
    if not runs or any(run.rows < 0 or min(run.stitches, run.stitches_to) < 1 for run in runs):
        raise Impossible("nothing left", f"these measures leave nothing for the {name}")
    told = words_of(runs, in_round, half) if words is None else words
    line = outline(runs, knit, half) if drawn is None else drawn
    return DrawnPiece(name, place, in_round, copies, runs, knit, edges, told, line)


def words_of(runs: Runs, in_round: bool = False, half: bool = False) -> tuple[str, ...]:
    """The work of each run in words, with what is cast off or increased between two of them."""
    told = [_step(runs[0], in_round, half)]
    for before, after in pairwise(runs):
        told += [*_between(before, after, half), _step(after, in_round, half)]
    return (*told, *_rest(runs[-1], told[-1]))


def _rest(last: KnitRun, told: str) -> tuple[str, ...]:
    """Steps of a shoulder end on stitches that are cast off too."""
    stepped = told.startswith("Cast off")
    return (f"Cast off the {last.stitches_to} stitches that are left.",) if stepped else ()


def _step(run: KnitRun, in_round: bool, half: bool) -> str:
    outer = run.stitches_to + run.gap_to - run.stitches - run.gap
    opened = run.gap_to != run.gap
    if opened and outer:
        return shaping_text(run.rows, run.stitches, run.stitches_to, in_round, ends=10**6)
    neck = "at the neck edge of" if half else "at each neck edge of"
    where = neck if opened else ("at the armhole edge of" if half else "")
    return shaping_text(
        run.rows, run.stitches, run.stitches_to, in_round, where, ends=1 if half else 2
    )


def _between(before: KnitRun, after: KnitRun, half: bool) -> Iterator[str]:
    opened = after.gap - before.gap_to
    change = after.stitches - before.stitches_to + opened
    if opened > 0:
        where = "at the neck edge" if half else "in the middle for the neck; work each side alone"
        yield f"Cast off {opened} stitches {where}."
    if change < 0:
        where = "at the armhole edge" if half else f"in all, {-change // 2} at each side"
        yield f"Cast off {-change} stitches {where}: {after.stitches} stitches."
    if change > 0:
        yield f"Increase {change} stitches evenly: {after.stitches} stitches."


def outline(runs: Runs, knit: Knit, half: bool = False) -> tuple[Point, ...]:
    """The polygon of a piece in cm, from the middle of its cast-on (or its straight edge if it is
    `half`), anticlockwise."""
    share = 1.0 if half else 0.5
    outer, inner = _edges(runs, knit, share)
    right = _without_repeats(outer)
    if half:
        return tuple(right + _without_repeats(inner)[::-1])
    opening = _opening(_without_repeats(inner))
    return tuple(right + opening + [(-x, y) for x, y in reversed(right)])


def _edges(runs: Runs, knit: Knit, share: float) -> tuple[list[Point], list[Point]]:
    """The outer edge and the edge of the opening, upwards, on the right."""
    outer: list[Point] = []
    inner: list[Point] = []
    row = 0
    for run in runs:
        ends = (
            (row, run.stitches, run.gap),
            (row + run.rows, run.stitches_to, run.gap_to),
        )
        outer += [(share * knit.wide(st + gap), knit.long(at)) for at, st, gap in ends]
        inner += [(share * knit.wide(gap), knit.long(at)) for at, _, gap in ends]
        row += run.rows
    return outer, inner


def _opening(inner: list[Point]) -> list[Point]:
    """Down the right edge of the opening and up its left; nothing where there is none."""
    while len(inner) > 1 and inner[0][0] == inner[1][0] == 0:
        inner = inner[1:]
    if all(x == 0 for x, _ in inner):
        return []
    return _without_repeats([*inner[::-1], *((-x, y) for x, y in inner)])


def _without_repeats(points: list[Point]) -> list[Point]:
    return points[:1] + [after for before, after in pairwise(points) if after != before]
