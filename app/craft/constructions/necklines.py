"""Necklines of a front or yoke: round, V or high, as an opening that begins so many rows below."""

from dataclasses import dataclass
from itertools import accumulate
from math import hypot

from app.craft.constructions.drawing import Impossible, Knit, KnitRun, Wanted, nearest

NECK_WIDTH = 0.37
"""Width of the neck opening as a share of the neck around its base (practice)."""

ROUND_DEPTH, HIGH_DEPTH = 0.17, 0.11
"""Depth of the front neck below the shoulder, as shares of the neck (practice)."""

BACK_DEPTH_CM = 2.0
"""Depth of the back neck (practice)."""

ROUND, V, HIGH = "round", "V", "high"
NECKLINES = (ROUND, V, HIGH)

Profile = tuple[tuple[int, int, int], ...]
"""(rows, stitches at the first, stitches at the last), from the bottom up."""

LEAST_SHOULDER = 2
"""Stitches; a shoulder has at least so many."""


@dataclass(frozen=True, slots=True)
class Neck:
    """An opening of `width` stitches between so many edges, `front` and `back` rows deep."""

    shape: str
    width: int
    front: int
    back: int
    edges: int = 2

    @property
    def begun(self) -> int:
        """Stitches cast off at once in front: half of it, or more where too few rows are left to
        decrease one at each edge in a row."""
        slanted = min(self.width // (2 * self.edges), self.front // 2)
        return 0 if self.shape == V else self.width - self.edges * slanted

    def halved(self, less: int) -> "Neck":
        """Its half beside a front edge that lies `less` stitches from the middle."""
        return Neck(self.shape, self.width // 2 - less, self.front, self.back, edges=1)

    def narrowed(self, less: int) -> "Neck":
        """The same with `less` stitches fewer: the fronts lack them from the start."""
        return Neck(self.shape, self.width - less, self.front, self.back)


def neck_of(wanted: Wanted, across: int, armhole_cm: float) -> Neck:
    """The neckline of a body that is `across` stitches at its shoulders. Impossible where no
    shoulder is left beside it."""
    knit, around = wanted.knit, wanted.cm("neck")
    width = knit.pairs(NECK_WIDTH * around)
    if across - width < 2 * LEAST_SHOULDER:
        raise Impossible(
            "neck too wide",
            f"the neck takes {width} of {across} stitches and leaves no shoulders",
        )
    shape = wanted.choices["neckline"]
    depth = {ROUND: ROUND_DEPTH * around, V: armhole_cm, HIGH: HIGH_DEPTH * around}[shape]
    front = knit.along(min(depth, armhole_cm), 2)
    return Neck(shape, width, max(front, 4), max(knit.along(BACK_DEPTH_CM, 2), 2))


def front_opening(neck: Neck, rows: int) -> Profile:
    """The opening of a front over so many rows up to the shoulder."""
    plain = rows - neck.front
    if neck.shape == V:
        return ((plain, 0, 0), (neck.front, 0, neck.width))
    curve, wide = neck.front // 2, neck.width
    return ((plain, 0, 0), (curve, neck.begun, wide), (neck.front - curve, wide, wide))


def back_opening(neck: Neck, rows: int) -> Profile:
    """The opening of a back: cast off straight, shortly below the shoulder."""
    return ((rows - neck.back, 0, 0), (neck.back, neck.width, neck.width))


def open_up(outer: Profile, opening: Profile, step: int = 2) -> tuple[KnitRun, ...]:
    """Runs of a piece with that outer shape and that opening, both over the same rows. Where one
    of them bends within a run of the other, its count is taken to the nearest `step`."""
    runs, row = [], 0
    for until in sorted(_bends(outer) | _bends(opening)):
        across, across_to = _at(outer, row, step)[1], _at(outer, until, step)[0]
        gap, gap_to = _at(opening, row, step)[1], _at(opening, until, step)[0]
        counts = (across - gap, across_to - gap_to)
        runs.append(KnitRun(until - row, *counts, gap=gap, gap_to=gap_to))
        row = until
    return tuple(runs)


def _bends(profile: Profile) -> set[int]:
    return set(accumulate(rows for rows, _, _ in profile if rows))


def _at(profile: Profile, row: int, step: int) -> tuple[int, int]:
    """The count just below a row line and just above it: they differ where stitches are cast off
    there, and at the ends the missing one repeats the other."""
    found, begun = [], 0
    for rows, start, end in profile:
        if rows and begun <= row <= begun + rows:
            on_the_way = start + step * nearest((end - start) / step * (row - begun) / rows)
            found.append(end if row == begun + rows else on_the_way)
        begun += rows
    return found[0], found[-1]


def neck_edge_cm(neck: Neck, knit: Knit) -> float:
    """Length of the neck's edge, front and back, in cm."""
    return front_edge_cm(neck, knit) + knit.wide(neck.width) + 2 * knit.long(neck.back)


def front_edge_cm(neck: Neck, knit: Knit) -> float:
    """Length of the neck's edge along the front, from shoulder to shoulder, in cm."""
    level, slanted = knit.wide(neck.begun), knit.wide(neck.width - neck.begun) / 2
    if neck.shape == V:
        return 2 * hypot(slanted, knit.long(neck.front))
    half = knit.long(neck.front) / 2
    return level + 2 * (hypot(slanted, half) + half)
