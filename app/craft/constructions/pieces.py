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
from app.craft.shaping import counted, shaping_phrase, shaping_text

PLAIN = "stocking stitch"

SIDES, BOTH_SIDES = "on each side of both side markers on", 4

EDGINGS: dict[tuple[bool, bool, bool], Edging] = {
    (True, True, True): "cast on, off and seams",
    (True, True, False): "cast on and off",
    (True, False, True): "cast on and seams",
    (True, False, False): "cast on",
    (False, True, True): "cast off and seams",
    (False, True, False): "cast off",
}

SIDE, ARMHOLE = "side edge", "armhole edge"
"""What the outer edge of a half piece is called below its armhole, and from there on."""

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
    work = words_of(runs, in_round, half) if words is None else words
    told = (*_begun(edges, runs, work), *work, *_ended(edges, runs, work, half))
    line = outline(runs, knit, half) if drawn is None else drawn
    return DrawnPiece(name, place, in_round, copies, runs, knit, edges, told, line)


def words_of(runs: Runs, in_round: bool = False, half: bool = False) -> tuple[str, ...]:
    """The work of each run in words, with what is cast off or increased between two of them."""
    armhole = _armhole(runs) if half else 0
    told = [_step(runs[0], in_round, half, SIDE if armhole else ARMHOLE)]
    for at, (before, after) in enumerate(pairwise(runs), 1):
        edge = SIDE if at < armhole else ARMHOLE
        told += [*_between(before, after, half), _step(after, in_round, half, edge)]
    return tuple(told)


def edging(*, cast_on: bool, cast_off: bool, sewn: bool = False) -> Edging:
    """What is done at the edges of a piece: one that is knit on from another is not cast on."""
    return EDGINGS.get((cast_on, cast_off, sewn), "none")


def at_both_sides(run: KnitRun, in_round: bool = True) -> str:
    """A run shaped at both its side markers, a stitch before and after each, in words."""
    return shaping_text(run.rows, run.stitches, run.stitches_to, in_round, SIDES, ends=BOTH_SIDES)


def _begun(edges: Edging, runs: Runs, told: tuple[str, ...]) -> Iterator[str]:
    if edges.startswith("cast on") and not told[0].startswith("Cast on"):
        yield f"Cast on {runs[0].stitches} stitches."


def _ended(edges: Edging, runs: Runs, work: tuple[str, ...], half: bool) -> Iterator[str]:
    if "off" in edges and not work[-1].endswith("cast off loosely."):
        loosely = ", loosely" if "stretchy" in edges else ""
        told = f"Cast off the {runs[-1].stitches_to} stitches that are left{loosely}"
        yield f"{told}{_on_each_side(runs[-1], half)}."


def _armhole(runs: Runs) -> int:
    """Which run begins with a cast-off at the armhole; 0 where none does."""
    return next((at for at, (a, b) in enumerate(pairwise(runs), 1) if _fewer(a, b) < 0), 0)


def _fewer(before: KnitRun, after: KnitRun) -> int:
    """Stitches gained between two runs beside those of the opening, below zero if cast off."""
    return after.stitches - before.stitches_to + after.gap - before.gap_to


def _step(run: KnitRun, in_round: bool, half: bool, edge: str) -> str:
    outer = run.stitches_to + run.gap_to - run.stitches - run.gap
    inner = run.gap - run.gap_to
    armhole = f"at the {edge} of" if half else f"at each {edge} of"
    neck = "at the neck edge of" if half else "at each neck edge of"
    ends = 1 if half else 2
    if outer and inner:
        both = [
            shaping_phrase(run.rows, change, run.worked, in_round, where, ends)[0]
            for change, where in ((outer, armhole), (inner, neck))
        ]
        over = counted(run.rows, "row")
        work = f"{both[0].lower()}; at the same time {both[1].lower()}".replace(f" over {over}", "")
        return f"Over {over} {work}: {run.stitches_to} stitches{_on_each_side(run, half)}."
    where = neck if inner else (armhole if half else "")
    told = shaping_text(run.rows, run.stitches, run.stitches_to, in_round, where, ends)
    begun, count, after = told.rpartition(f"{run.stitches_to} stitches")
    told = f"{begun}{count}{_on_each_side(run, half)}{after}"
    return told if run.pattern == PLAIN else f"{told[:-1]}, in {run.pattern}."


def _on_each_side(run: KnitRun, half: bool) -> str:
    """A piece that is parted in its middle is knit on one side at a time."""
    return "" if half or not run.gap_to else f", {run.stitches_to // 2} on each side"


def _between(before: KnitRun, after: KnitRun, half: bool) -> Iterator[str]:
    opened = after.gap - before.gap_to
    change = _fewer(before, after)
    if not after.gap and after.gap_to and not half:
        yield "Part it in the middle for the neck; work each side alone."
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
