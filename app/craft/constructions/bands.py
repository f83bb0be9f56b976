"""Bands: hems, cuffs, neck and front bands, each to its own stitch multiple, depth and gauge."""

from dataclasses import dataclass, replace

from app.craft.constructions.drawing import Band, DrawnPiece, Edging, Join, KnitRun, Place, nearest
from app.craft.constructions.pieces import edging, piece
from app.craft.patterns import pattern_of
from app.craft.shaping import counted, multiples_near, one_in_every, pick_up

DRAWN_IN = 0.9
"""A ribbed hem or cuff is cast on with nine tenths of the stitches (Zimmermann, Knitting Without
Tears: 189 for 210)."""

HEM, CUFF, NECK, FRONT, ARMHOLE = "hem", "cuff", "neck band", "front band", "armhole band"

TOPS = "the top of each front band"

HALF_STITCH = 0.5

AT_THE_POINT = 2
"""Stitches a band loses in each round at the point of a V (practice)."""

Joins = tuple[Join, ...]
Made = tuple[tuple[DrawnPiece, Joins], ...]
"""A band and how it meets its edge, or nothing."""


def joins_of(bands: Made) -> Joins:
    """How all of them meet what they are knit to."""
    return tuple(one for _, joins in bands for one in joins)


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
    sewn: bool = False,
) -> DrawnPiece | None:
    """A hem or cuff below a piece that begins with `joined` stitches and is `width_cm` wide; None
    where the band has no depth. It is cast on, and the piece is knit on from it."""
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
    how = edging(cast_on=True, cast_off=False, sewn=sewn)
    return piece(
        name, place, (run,), band.knit, in_round=in_round, copies=copies, edges=how, words=words
    )


@dataclass(frozen=True, slots=True)
class Begun:
    """How a band begins: with so many stitches, in words, what is done at its edges, and how it
    meets what it is knit to. A `pointed` one is mitred at the point of a V."""

    taken: int
    words: str
    edges: Edging
    meets: Joins
    pointed: bool = False


def picked_up(
    name: str,
    place: Place,
    band: Band,
    edge_cm: float,
    *,
    in_round: bool,
    copies: int = 1,
    rows: float = 0.0,
    tops_cm: float = 0.0,
    pointed: bool = False,
) -> Made:
    """A band picked up along `edge_cm` of a piece; the count is brought to the pattern's multiple
    in its first row. Along the ends of rows, `rows` in 10 cm, it is told how many each give; of
    front bands it takes in the tops as well, `tops_cm` each. Nothing where the band has no
    depth."""
    wanted, tops = band.knit.across(edge_cm), _tops(band, tops_cm)
    along = max(nearest(wanted), 1)
    words = f"Pick up {along + 2 * tops} stitches{_of_rows(band.knit.stitches, rows)}"
    words += f", {tops} of them along the top of each front band." if tops else "."
    meets = (along_edge(name, "picked up along", along, wanted), *_meets_tops(name, band, tops_cm))
    begun = Begun(along + 2 * tops, words, "picked up, stretchy cast-off", meets, pointed)
    return _band_from(name, place, band, begun, in_round, copies)


def live(
    name: str, place: Place, band: Band, stitches: int, *, in_round: bool, tops_cm: float = 0.0
) -> Made:
    """A band knit on from `stitches` left on the needle, and picked up along the tops of the front
    bands beside them. Nothing where it has no depth."""
    tops = _tops(band, tops_cm)
    also = f" and pick up {tops} along the top of each front band: {stitches + 2 * tops} stitches"
    words = f"Knit on from {stitches} stitches{also if tops else ''}."
    lives = along_edge(name, "knit on from", stitches, stitches)
    meets = (lives, *_meets_tops(name, band, tops_cm))
    begun = Begun(stitches + 2 * tops, words, "stretchy cast-off", meets)
    return _band_from(name, place, band, begun, in_round, 1)


def _tops(band: Band, tops_cm: float) -> int:
    return nearest(band.knit.across(tops_cm))


def _meets_tops(name: str, band: Band, tops_cm: float) -> Joins:
    if not tops_cm:
        return ()
    wanted = band.knit.across(tops_cm)
    return (along_edge(name, "picked up along", _tops(band, tops_cm), wanted, TOPS),)


def _of_rows(stitches: float, rows: float) -> str:
    """Nothing where the rows are not known, or are too long to give a stitch at most."""
    if rows < stitches:
        return ""
    groups = [f"{taken} in {of}" for taken, of in pick_up(stitches, rows)]
    return f": of the rows {', '.join(groups)}, and so on"


def _band_from(
    name: str, place: Place, band: Band, begun: Begun, in_round: bool, copies: int
) -> Made:
    rows = band.knit.along(band.depth_cm)
    if not rows:
        return ()
    count = band_count(begun.taken, band.pattern, in_round)
    last = count - AT_THE_POINT * rows if begun.pointed else count
    run = KnitRun(rows, count, last, band.pattern)
    row = "round" if in_round else "row"
    mitred = f" with a double decrease at the point of the V in every {row}: {last} stitches;"
    words = (
        begun.words,
        *([_into(begun.taken, count, row)] if begun.taken != count else []),
        f"Work {counted(rows, row)} in {band.pattern}{mitred if begun.pointed else ' and'} "
        "cast off loosely.",
    )
    how = begun.edges
    made = piece(
        name, place, (run,), band.knit, in_round=in_round, copies=copies, edges=how, words=words
    )
    return ((made, begun.meets),)


def along_edge(name: str, how: str, taken: int, wanted: float, edge: str = "the edge") -> Join:
    """How a band that takes so many stitches meets an edge that wants so many."""
    return Join(name, edge, how, taken, wanted, "stitches", -HALF_STITCH, HALF_STITCH)


def _into(have: int, want: int, row: str) -> str:
    """The row that changes the count is the first of what follows, not one more."""
    if have == want:
        return f"Go on with {want} stitches."
    verb = "increase" if want > have else "decrease"
    many = abs(want - have)
    how = "one stitch" if many == 1 else f"{many} evenly{one_in_every(many, have)}"
    return f"In the first {row} that follows {verb} {how}: {want} stitches."
