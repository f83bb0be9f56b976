"""The raglan yoke: four lines from underarm to neck, along which all is drawn in."""

from collections.abc import Iterator
from dataclasses import dataclass

from app.craft.constructions.belonging import belonging
from app.craft.constructions.bodies import trunk_of
from app.craft.constructions.drawing import Drawing, Impossible, KnitRun, Wanted, nearest
from app.craft.constructions.flat_bodies import overlap
from app.craft.constructions.necklines import (
    Neck,
    Profile,
    front_edge_cm,
    front_opening,
    neck_of,
    open_up,
)
from app.craft.constructions.one_piece import Joined, Yoke, in_one_piece
from app.craft.constructions.pieces import Runs
from app.craft.constructions.sleeves import sleeve_of
from app.craft.shaping import counted, even_spacing, shaping_phrase, spacing_text, turns_of

UNDERARM = 0.08
"""Stitches that rest at each underarm, as a share of those around the body (Zimmermann, Knitting
Without Tears)."""

LINES = 4

SLEEVE_TOP = 0.08
"""Width of a sleeve's top at the neck, as a share of the neck (practice)."""


def underarm_of(around: int) -> int:
    """An even count of 8 % of the stitches around the body."""
    return 2 * nearest(UNDERARM * around / 2)


@dataclass(frozen=True, slots=True)
class Lines:
    """Decreases at each line, of the body's side and of the sleeves' side, over so many rows, and
    the stitches a sleeve has left at the neck."""

    body: int
    sleeve: int
    rows: int
    top: int


def raglan(wanted: Wanted, opened: bool) -> Drawing:
    """A garment in one piece with a raglan yoke. Impossible where a line would lose more than a
    stitch a row on either side, or the neck leaves nothing of the back."""
    knit = wanted.knit
    trunk = trunk_of(wanted)
    underarm = underarm_of(2 * trunk.across)
    sleeve = sleeve_of(wanted, knit.pairs(wanted.cm("upper arm")), every=1)
    neck = neck_of(wanted, trunk.across - underarm, trunk.armhole_cm)
    less = overlap(wanted, neck) if opened else None
    joined = Joined(trunk, sleeve, underarm, less)
    belonging(wanted)
    lines = _lines(wanted, joined, neck)
    return in_one_piece(wanted, joined, _yoke(wanted, joined, neck, lines))


def _lines(wanted: Wanted, joined: Joined, neck: Neck) -> Lines:
    back = joined.trunk.across - joined.underarm
    arm = joined.sleeve.upper - joined.underarm
    if arm < 2:
        raise Impossible("sleeve does not fit", "the underarm takes the whole of the sleeve")
    top = min(max(wanted.knit.pairs(SLEEVE_TOP * wanted.cm("neck")), 2), arm)
    lines = Lines((back - neck.width) // 2, (arm - top) // 2, joined.trunk.armhole, top)
    if max(lines.body, lines.sleeve) > lines.rows:
        raise Impossible("too steep", "the raglan would lose more than a stitch a row at its lines")
    return lines


def _yoke(wanted: Wanted, joined: Joined, neck: Neck, lines: Lines) -> Yoke:
    knit, less = wanted.knit, joined.less or 0
    end = 2 * neck.width + 2 * lines.top - joined.missing
    outer: Profile = ((lines.rows, joined.count, end),)
    runs = open_up(outer, front_opening(neck.narrowed(joined.missing), lines.rows))
    edge = front_edge_cm(neck, knit) - 2 * knit.wide(less)
    edge += knit.wide(neck.width + 2 * lines.top)
    return Yoke(runs, _words(joined, neck, lines, runs), lines.rows - neck.front, neck, edge)


def _words(joined: Joined, neck: Neck, lines: Lines, runs: Runs) -> tuple[str, ...]:
    row = "round" if joined.less is None else "row"
    told = [f"Join body and sleeves: {joined.count} stitches; mark the four lines between them."]
    for whose, times in (("body", lines.body), ("sleeves", lines.sleeve)):
        if times:
            spacing = even_spacing(times, lines.rows)
            worked = lines.rows * joined.count / 2
            spread = spacing_text(spacing, row, turns_of(spacing, worked, LINES))
            told.append(f"Decrease one stitch of the {whose} beside each line on {spread}.")
    plain = lines.rows - neck.front
    when = f"After {counted(plain, row)}" if plain else "From the first on"
    told.append(f"{when} work the {neck.shape} neck as well, while the lines go on.")
    opening = [run for run in runs if run.rows and run.gap_to]
    return (
        *told,
        *_neck_words(opening, joined.less is None),
        f"{counted(lines.rows, row)} in all.",
    )


def _neck_words(opening: list[KnitRun], closed: bool) -> Iterator[str]:
    """What is cast off at once, and what is decreased at both its edges."""
    begun = opening[0].gap
    if begun and closed:
        yield f"Cast off {begun} stitches in the middle of the front and go on to and fro."
    elif begun:
        yield f"Cast off {begun // 2} stitches at each front edge."
    elif closed:
        yield "Part the front in its middle and go on to and fro."
    for run in opening:
        fewer = run.gap - run.gap_to
        if fewer:
            told, _ = shaping_phrase(run.rows, fewer, run.worked, False, "at each neck edge of")
            yield f"{told.replace('Cast off', 'At the neck edges cast off')}."
