"""Bands: hems, cuffs, neck and front bands, each to its own stitch multiple, depth and gauge."""

from dataclasses import replace

from app.craft.constructions.drawing import Band, DrawnPiece, Edging, Join, KnitRun, Place, nearest
from app.craft.constructions.pieces import piece
from app.craft.patterns import pattern_of
from app.craft.shaping import counted, multiples_near, pick_up

DRAWN_IN = 0.9
"""A ribbed hem or cuff is cast on with nine tenths of the stitches (Zimmermann, Knitting Without
Tears: 189 for 210)."""

HEM, CUFF, NECK, FRONT, ARMHOLE = "hem", "cuff", "neck band", "front band", "armhole band"

HALF_STITCH = 0.5

Made = tuple[tuple[DrawnPiece, Join], ...]
"""A band and how it meets its edge, or nothing."""


def band_count(stitches: float, pattern: str, in_round: bool) -> int:
    """The count nearest to `stitches` that the pattern repeats over: in the round a multiple, flat
    with its edge stitches; at least one repeat."""
    known = pattern_of(pattern)
    multiple = known.multiple or 1
    plus = 0 if in_round else known.plus or 0
    count = nearest(stitches)
    below, above = multiples_near(count, multiple, plus)
    return max(below if count - below <= above - count else above, multiple + plus)


def at_most(band: Band, depth_cm: float) -> Band:
    """The band, or as much of its depth as a short piece leaves room for."""
    return replace(band, depth_cm=min(band.depth_cm, max(depth_cm, 0.0)))


def share_of(pattern: str) -> float:
    """How much of the width a hem or cuff in this pattern is cast on with."""
    return DRAWN_IN if pattern.endswith("rib") else 1.0


def edge_band(
    name: str,
    place: Place,
    band: Band,
    width_cm: float,
    joined: int,
    *,
    in_round: bool,
    copies: int,
) -> DrawnPiece | None:
    """A hem or cuff below a piece that begins with `joined` stitches and is `width_cm` wide; None
    where the band has no depth. Knit flat, its edges are counted with the piece above it."""
    rows = band.knit.along(band.depth_cm)
    if not rows:
        return None
    wanted = band.knit.across(width_cm) * share_of(band.pattern)
    count = band_count(wanted, band.pattern, in_round)
    run = KnitRun(rows, count, count, band.pattern)
    row = "round" if in_round else "row"
    words = (
        f"Cast on {count} stitches and work {counted(rows, row)} in {band.pattern}.",
        _into(count, joined, row),
    )
    how: Edging = "cast on and off" if in_round else "none"
    return piece(
        name, place, (run,), band.knit, in_round=in_round, copies=copies, edges=how, words=words
    )


def picked_up(
    name: str,
    place: Place,
    band: Band,
    edge_cm: float,
    *,
    in_round: bool,
    copies: int = 1,
    rows: float = 0.0,
) -> Made:
    """A band picked up along `edge_cm` of a piece; the count is brought to the pattern's multiple
    in its first row. Along the ends of rows, `rows` in 10 cm, it is told how many each give.
    Nothing where the band has no depth."""
    wanted = band.knit.across(edge_cm)
    taken = max(nearest(wanted), 1)
    begun = f"Pick up {taken} stitches{_of_rows(band.knit.stitches, rows)}."
    meets = along_edge(name, "picked up along", taken, wanted)
    return _band_from(name, place, band, taken, begun, meets, in_round, copies)


def live(name: str, place: Place, band: Band, stitches: int, *, in_round: bool) -> Made:
    """A band knit on from `stitches` left on the needle. Nothing where it has no depth."""
    begun = f"Knit on from {stitches} stitches."
    meets = along_edge(name, "knit on from", stitches, stitches)
    return _band_from(name, place, band, stitches, begun, meets, in_round, 1)


def _of_rows(stitches: float, rows: float) -> str:
    """Nothing where the rows are not known, or are too long to give a stitch at most."""
    if rows < stitches:
        return ""
    groups = [f"{taken} in {of}" for taken, of in pick_up(stitches, rows)]
    return f": of the rows {', '.join(groups)}, and so on"


def _band_from(
    name: str,
    place: Place,
    band: Band,
    taken: int,
    begun: str,
    meets: Join,
    in_round: bool,
    copies: int,
) -> Made:
    rows = band.knit.along(band.depth_cm)
    if not rows:
        return ()
    count = band_count(taken, band.pattern, in_round)
    run = KnitRun(rows, count, count, band.pattern)
    row = "round" if in_round else "row"
    words = (
        begun,
        _into(taken, count, row),
        f"Work {counted(rows, row)} in {band.pattern} and cast off loosely.",
    )
    edges: Edging = "picked up, stretchy cast-off"
    made = piece(
        name, place, (run,), band.knit, in_round=in_round, copies=copies, edges=edges, words=words
    )
    return ((made, meets),)


def along_edge(name: str, how: str, taken: int, wanted: float) -> Join:
    """How a band that takes so many stitches meets an edge that wants so many."""
    return Join(name, "the edge", how, taken, wanted, "stitches", -HALF_STITCH, HALF_STITCH)


def _into(have: int, want: int, row: str) -> str:
    """The row that changes the count is the first of what follows, not one more."""
    if have == want:
        return f"Go on with {want} stitches."
    verb = "increase" if want > have else "decrease"
    return f"In the first {row} that follows {verb} {abs(want - have)} evenly: {want} stitches."
