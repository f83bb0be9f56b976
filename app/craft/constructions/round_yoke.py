"""The round yoke by percentages: every count follows from the stitches around the body.

Elizabeth Zimmermann, Knitting Without Tears: of K stitches the wrist takes 20 %, the upper arm
33 %, each underarm 8 %; three rounds of "knit 1, knit 2 together" bring the yoke to the neck; the
yoke is a quarter of the body's circumference deep.
"""

from dataclasses import dataclass
from itertools import pairwise

from app.craft.constructions.bands import FRONT
from app.craft.constructions.belonging import belonging
from app.craft.constructions.bodies import trunk_of
from app.craft.constructions.drawing import Drawing, Impossible, KnitRun, Wanted, nearest
from app.craft.constructions.one_piece import Joined, Yoke, in_one_piece
from app.craft.constructions.raglan import underarm_of
from app.craft.constructions.sleeves import sleeve_of
from app.craft.shaping import counted, one_in_every

WRIST, UPPER_ARM, DEPTH = 0.20, 0.33, 0.25

BY_PERCENTAGE, BY_MEASURE = "by percentage", "by measure"
PROPORTIONS = (BY_PERCENTAGE, BY_MEASURE)

DEEPEST = 1.15
"""By measure a yoke is at most this many times the armhole deep: a quarter of a wide body would
reach too far down (practice)."""

LEAST_ROWS = 8


@dataclass(frozen=True, slots=True)
class Counts:
    """Stitches left after each of three rounds of decreases, the last of them at the neck."""

    first: int
    second: int
    neck: int


def by_thirds(joined: int) -> Counts:
    """Three rounds of "knit 1, knit 2 together", each of which takes ⌊n/3⌋: 268 → 179, 120, 80."""
    first = joined - joined // 3
    second = first - first // 3
    return Counts(first, second, second - second // 3)


def to_the_neck(joined: int, neck: int) -> Counts:
    """Three rounds that take the same share each and end on `neck` stitches."""
    share = neck / joined
    return Counts(nearest(joined * share ** (1 / 3)), nearest(joined * share ** (2 / 3)), neck)


def round_yoke(wanted: Wanted, opened: bool) -> Drawing:
    """A garment in one piece with a round yoke. Impossible where the yoke is too shallow for its
    three rounds, or the neck as wide as the yoke."""
    percent = wanted.choices["proportions"] == BY_PERCENTAGE
    knit = wanted.knit
    depth = DEPTH * wanted.cm("chest")
    if not percent:
        depth = min(depth, DEEPEST * wanted.cm("armhole depth"))
    trunk = trunk_of(wanted, depth)
    around = 2 * trunk.across
    upper = _even(UPPER_ARM * around) if percent else knit.pairs(wanted.cm("upper arm"))
    wrist = _even(WRIST * around) if percent else None
    sleeve = sleeve_of(wanted, upper, every=1, wrist=wrist)
    whole = Joined(trunk, sleeve, underarm_of(around), None)
    counts = _counts(whole, None if percent else knit.pairs(wanted.cm("neck")))
    belonging(wanted)
    less = _overlap(wanted, counts) if opened else None
    joined = Joined(trunk, sleeve, whole.underarm, less)
    return in_one_piece(wanted, joined, _yoke(joined, counts))


def _counts(joined: Joined, neck: int | None) -> Counts:
    if joined.sleeve.upper <= joined.underarm:
        raise Impossible("sleeve does not fit", "the underarm takes the whole of the sleeve")
    if neck is None:
        return by_thirds(joined.count)
    if neck >= joined.count:
        raise Impossible("neck too wide", f"the neck takes {neck} of {joined.count} stitches")
    return to_the_neck(joined.count, neck)


def _overlap(wanted: Wanted, counts: Counts) -> int:
    """Stitches each front lacks to the middle, where the bands lie over each other."""
    wide = wanted.knit.across(wanted.bands[FRONT].depth_cm / 2)
    return min(nearest(wide), counts.neck // 4)


def _yoke(joined: Joined, counts: Counts) -> Yoke:
    rows = joined.trunk.armhole
    if rows < LEAST_ROWS:
        raise Impossible("too steep", "the yoke is too shallow for three rounds of decreases")
    lower, middle = rows // 2, (rows - rows // 2) // 2
    upper = rows - lower - middle - 1
    missing = joined.missing
    full, first, second, neck = (
        n - missing for n in (joined.count + missing, counts.first, counts.second, counts.neck)
    )
    runs = tuple(
        KnitRun(long, wide, wide)
        for long, wide in ((lower, full), (middle, first), (upper, second), (1, neck))
    )
    return Yoke(runs, _words(joined, runs), rows)


def _words(joined: Joined, runs: tuple[KnitRun, ...]) -> tuple[str, ...]:
    """The row of a decrease is the first of the run after it."""
    row = "round" if joined.less is None else "row"
    told = [f"Join body and sleeves: {joined.count} stitches."]
    for at, (run, after) in enumerate(pairwise(runs)):
        taken = run.stitches - after.stitches
        plain = run.rows - (1 if at else 0)
        told.append(
            f"Work {counted(plain, row)}{' more' if at else ''}; in the next decrease {taken} "
            f"stitches evenly{_how(run.stitches, taken)}: {after.stitches} stitches."
        )
    return tuple(told)


def _how(stitches: int, taken: int) -> str:
    if taken == stitches // 3:
        return " (knit 1, knit 2 together all along)"
    return one_in_every(taken, stitches)


def _even(stitches: float) -> int:
    return 2 * nearest(stitches / 2)
