"""A fade that ends where she wants it: which row it begins at, from what there is of the yarn.

The yarn that leaves knits every row up to the fade, takes less and less turns in it, and ends at a
share that is still a quarter or more: with less, its last row could lie anywhere. It may run over
several pieces, each with its own part of it. What it should take lies so far below what there is
that no rounding to whole rows can pass it.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import accumulate

from app.book.sequence import Sequence, SequenceYarn
from app.craft.alternate import furthest
from app.planning.sequence_piece import Piece, beyond_supply, last_row_of, taken_by
from app.planning.sequence_refused import Refused
from app.planning.sequence_spread import LEAST_FALL, Knit, spread, within

ENDS_AT = 0.25
"""The share at which the yarn that leaves stops, at least."""

ENDS_AT_MOST = 0.5
"""With a larger share it would not look like an end."""

EARLIER, SHARES = 5, 10
"""How many blocks earlier, and with how many shares, the end is looked for."""


@dataclass(frozen=True, slots=True)
class Fade:
    """What is asked: the role that leaves, those that come with their weights among each other, the
    metres there are of each (a role not in it has no limit), and the rows, counted through all
    pieces from 1, where the fade begins (None: solved) and ends (None: the last)."""

    leaves: str
    come: tuple[tuple[str, float], ...]
    have: Mapping[str, float]
    from_row: int | None = None
    to_row: int | None = None


@dataclass(frozen=True, slots=True)
class Ramp:
    """The share of the yarn that leaves, from `first` to `last` over the rows of the fade."""

    from_row: int
    to_row: int
    first: float
    last: float

    def share(self, row: int) -> float:
        """Its share of a row up to the last of the fade: all of it before the fade begins."""
        if row < self.from_row:
            return 1.0
        along = (row - self.from_row) / max(1, self.to_row - self.from_row)
        return self.first + (self.last - self.first) * along

    def sequence(self, asked: Fade) -> Sequence:
        """The whole fade, the yarns that come sharing what the one that leaves lets go."""
        weights = sum(weight for _, weight in asked.come)
        last = min(self.last, self.first - LEAST_FALL)
        come = (
            SequenceYarn(role, (1 - self.first) * w / weights, (1 - last) * w / weights)
            for role, w in asked.come
        )
        leaves = SequenceYarn(asked.leaves, self.first, last)
        return Sequence("fade", (leaves, *come), from_row=self.from_row, to_row=self.to_row)


def fade(pieces: list[Piece], asked: Fade) -> Knit:
    """The pieces with their sequences, of all that keep within what there is the one whose leaving
    yarn ends nearest the wanted row. Refused where there is none."""
    solver = _Solver(pieces, asked)
    tried: list[tuple[bool, int, float, int, Knit]] = []
    for ramp in solver.ramps():
        found = spread(pieces, ramp.sequence(asked))
        taken = taken_by(found)
        over = asked.leaves in beyond_supply(taken, asked.have)
        missed = solver.to_row - last_row_of(asked.leaves, found)
        tried.append((over, missed, -taken.get(asked.leaves, 0.0), len(tried), found))
        if not over and missed == 0:
            break
    return within(min(tried)[-1], asked.have)


class _Solver:
    def __init__(self, pieces: list[Piece], asked: Fade) -> None:
        self.pieces, self.asked = pieces, asked
        self.metres = [m for piece in pieces for m in piece.metres]
        self.block = max(one.block_rows for one in pieces)
        whole = len(self.metres)
        self.to_row = self._whole_blocks(min(asked.to_row or whole, whole))
        if self.to_row < (asked.from_row or 1) + 2 * self.block - 1:
            raise Refused("no room for a fade", asked.leaves)
        longest = max(one.longest for one in pieces)
        stray = furthest(1 + len(asked.come)) * longest * len(pieces)
        self.limit = asked.have.get(asked.leaves, float("inf")) - stray

    def ramps(self) -> Iterator[Ramp]:
        """Ramps whose targets keep within what there is, those that begin latest first."""
        from_row = self.asked.from_row or self._latest()
        if from_row is None:
            yield from self._from_the_start()
            return
        earliest = from_row if self.asked.from_row else from_row - EARLIER * self.block
        for first in range(from_row, max(earliest, 1) - 1, -self.block):
            yield from self._ends(first, 1.0)

    def _latest(self) -> int | None:
        """The latest row to begin at; None where even from the first row on it is too much."""
        if self.target(Ramp(self.to_row + 1, self.to_row, 1.0, 1.0)) <= self.limit:
            raise Refused("enough without a fade", self.asked.leaves, row=self.to_row)
        for first in range(self.to_row - self.block + 1, 0, -self.block):
            if self.target(Ramp(first, self.to_row, 1.0, ENDS_AT)) <= self.limit:
                return first
        return None

    def _from_the_start(self) -> Iterator[Ramp]:
        """Begun with a smaller share, since the yarn cannot knit every row even at first."""
        least = self.target(Ramp(1, self.to_row, ENDS_AT, ENDS_AT))
        if least > self.limit:
            raise Refused("too little", self.asked.leaves, least - self.limit, self._reaches())
        most = self.target(Ramp(1, self.to_row, 1.0, ENDS_AT))
        first = ENDS_AT + (1 - ENDS_AT) * (self.limit - least) / (most - least)
        for step in range(2 * SHARES):
            yield from self._ends(1, first - (first - ENDS_AT) * step / (2 * SHARES))

    def _ends(self, from_row: int, first: float) -> Iterator[Ramp]:
        """One beginning with several shares to end at: the smallest first, but where the beginning
        is solved the largest, to knit as much of the yarn as there is."""
        low = self.target(Ramp(from_row, self.to_row, first, ENDS_AT))
        high = self.target(Ramp(from_row, self.to_row, first, first))
        if low > self.limit and self.asked.from_row:
            raise Refused("too little", self.asked.leaves, low - self.limit, self._reaches())
        room = (self.limit - low) / (high - low) if high > low else 1.0
        most = min(ENDS_AT + (first - ENDS_AT) * min(1.0, max(0.0, room)), ENDS_AT_MOST)
        steps = range(SHARES + 1)
        for step in steps if self.asked.from_row else reversed(steps):
            share = ENDS_AT + (most - ENDS_AT) * step / SHARES
            yield Ramp(from_row, self.to_row, first, share)

    def target(self, ramp: Ramp) -> float:
        """Metres the yarn that leaves should take."""
        return sum(m * ramp.share(row) for row, m in enumerate(self.metres[: ramp.to_row], 1))

    def _reaches(self) -> int:
        """The last row it could reach with the least share."""
        found = 0
        for row, metres in enumerate(accumulate(self.metres), 1):
            if metres * ENDS_AT <= self.limit:
                found = row
        return self._whole_blocks(found)

    def _whole_blocks(self, row: int) -> int:
        return row - row % self.block
