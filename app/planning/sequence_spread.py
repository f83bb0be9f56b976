"""One sequence over several pieces knit one after the other: each gets its own part of it."""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from itertools import accumulate, groupby

from app.book.sequence import Band, Sequence, SequenceYarn
from app.craft.alternate import furthest
from app.planning.sequence_piece import Piece, beyond_supply, taken_by
from app.planning.sequence_refused import Refused
from app.planning.sequence_rows import place_in

LEAST_FALL = 1e-4
"""A yarn whose share does not fall stays after a fade; one that leaves falls by so much."""

PLACES = 6
"""Decimals of a share that are kept."""

Knit = list[tuple[Piece, Sequence | None]]


def spread(pieces: list[Piece], whole: Sequence) -> Knit:
    """Each piece with its part of a sequence whose rows are counted through all of them, from 1;
    None where the piece is knit in the main yarn all through."""
    rows = sum(one.rows for one in pieces)
    place = place_in(rows, whole)
    return [(piece, _own(piece, start, whole, place)) for piece, start in _starts(pieces)]


def within(knit: Knit, have: Mapping[str, float]) -> Knit:
    """The same, if no yarn takes more than there is of it (in m; a role not in it has no limit).
    Refused otherwise, for the yarn that lacks most."""
    short = beyond_supply(taken_by(knit), have)
    if short:
        role = max(short, key=lambda one: short[one])
        raise Refused("too little", role, short[role])
    return knit


def by_supply(pieces: list[Piece], have: Mapping[str, float], rows: slice) -> dict[str, float]:
    """Shares as there is of each yarn, kept so far below it that no rounding to whole rows passes
    it. Refused where all together are too little for those rows."""
    needed = sum([m for piece in pieces for m in piece.metres][rows])
    stray = furthest(len(have)) * max(one.longest for one in pieces) * len(pieces)
    usable = {role: max(0.0, metres - stray) for role, metres in have.items()}
    together = sum(usable.values())
    if together < needed or together <= 0:
        raise Refused("too little together", short_m=needed - together)
    return {role: metres / together for role, metres in usable.items()}


def _starts(pieces: list[Piece]) -> Iterator[tuple[Piece, int]]:
    """Each piece with how many rows are knit before it."""
    before = accumulate((one.rows for one in pieces), initial=0)
    return zip(pieces, before, strict=False)


def _own(piece: Piece, before: int, whole: Sequence, place: tuple[int, int]) -> Sequence | None:
    first, last = max(place[0] - before, 0), min(place[1] - before, piece.rows)
    if first >= piece.rows or last <= 0:
        return _beside(piece, whole, earlier=first >= piece.rows)
    rows = range(before + first, before + last)
    yarns = tuple(_part_of(one, rows, place) for one in whole.yarns)
    to_row = last if last < piece.rows else None
    own = replace(whole, yarns=yarns, from_row=first + 1, to_row=to_row)
    bands = _going_on(whole.bands, rows[0] - place[0])
    return replace(own, bands=bands, block_rows=piece.block_rows)


def _going_on(bands: tuple[Band, ...], knit: int) -> tuple[Band, ...]:
    """Stripes as they go on after so many rows of them."""
    rows = [one.role for one in bands for _ in range(one.rows)]
    at = knit % len(rows) if rows else 0
    turned = groupby([*rows[at:], *rows[:at]])
    return tuple(Band(role, sum(1 for _ in alike)) for role, alike in turned)


def _part_of(yarn: SequenceYarn, rows: range, place: tuple[int, int]) -> SequenceYarn:
    """A yarn's shares at the ends of these rows."""
    steps = max(1, place[1] - place[0] - 1)
    fall = yarn.share_to - yarn.share
    begin, end = (yarn.share + fall * (row - place[0]) / steps for row in (rows[0], rows[-1]))
    if fall < 0:
        end = min(end, max(begin - LEAST_FALL, 0.0))
    return replace(yarn, share=round(begin, PLACES), share_to=round(end, PLACES))


def _beside(piece: Piece, whole: Sequence, earlier: bool) -> Sequence | None:
    """A piece that is knit before or after all of a sequence: of a fade in what leaves or stays."""
    if whole.kind != "fade":
        return None
    shares = {one.role: one.share if earlier else one.share_to for one in whole.yarns}
    staying = [one for one in whole.yarns if shares[one.role] >= max(one.share, one.share_to)]
    together = sum(shares[one.role] for one in staying) or 1.0
    even = {one.role: shares[one.role] / together for one in staying}
    found = [SequenceYarn(role, share, share) for role, share in even.items() if share]
    if [one.role for one in found] in ([], [whole.role]):
        return None
    return Sequence("alternate", tuple(found), role=whole.role, block_rows=piece.block_rows)
