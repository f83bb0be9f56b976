"""A part as it is worked, and what yarns that take turns in it would take."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from app.book.plan import Part
from app.book.sequence import Sequence
from app.book.shape import Run
from app.planning.needs import PartNeed
from app.planning.places import in_round
from app.planning.rows import metres_per_row
from app.planning.schedule import schedule
from app.planning.sequence_rows import strand_stitches, turns


@dataclass(frozen=True, slots=True)
class Piece:
    """The rows of a part: its runs, and the metres of each row in all copies that the yarns which
    take turns will knit. `block_rows` are knit between two changes of yarn."""

    part: Part
    runs: tuple[Run, ...]
    metres: tuple[float, ...]
    block_rows: int = 1

    @property
    def rows(self) -> int:
        return len(self.metres)

    @property
    def longest(self) -> float:
        """The most yarn that is knit between two changes, in m."""
        each = self.block_rows
        return max(sum(self.metres[at : at + each]) for at in range(self.rows))

    @property
    def stitches(self) -> tuple[float, ...]:
        """Stitches' worth of yarn in each row of one copy that the yarns in turn will knit."""
        return strand_stitches(self.runs, "main")

    def roles(self, sequence: Sequence | None) -> tuple[str, ...]:
        """The role that knits each row; the main yarn without a sequence."""
        return turns(self.runs, sequence) if sequence else ("main",) * self.rows


def piece_of(need: PartNeed) -> Piece | None:
    """A part laid out for yarns to take turns in its main yarn's place; None where it has no
    rows, or none in that yarn. Seams are counted with the first row."""
    if need.gauge is None or need.loop is None:
        return None
    part = replace(need.part, sequence=None)
    runs = schedule(part.shape, need.gauge, part.worked)
    shares = [_share(run) for run in runs for _ in range(run.rows)]
    if not any(shares):
        return None
    rows = metres_per_row(part, need.gauge, need.loop, need.held)
    metres = [part.copies * m * share for m, share in zip(rows, shares, strict=True)]
    whole = sum(one.need.value for one in need.roles) - part.copies * sum(rows)
    metres[0] += max(0.0, whole) * shares[0]
    return Piece(part, runs, tuple(metres), 1 if in_round(part) else 2)


def taken_by(pieces: list[tuple[Piece, Sequence | None]]) -> dict[str, float]:
    """Metres each role takes in pieces knit one after the other."""
    found: dict[str, float] = {}
    for piece, sequence in pieces:
        for role, metres in zip(piece.roles(sequence), piece.metres, strict=True):
            found[role] = found.get(role, 0.0) + metres
    return found


def last_row_of(role: str, pieces: list[tuple[Piece, Sequence | None]]) -> int:
    """The last row a role knits, counted through all pieces from 1; 0 where it knits none."""
    last, before = 0, 0
    for piece, sequence in pieces:
        for row, knit in enumerate(piece.roles(sequence), before + 1):
            last = row if knit == role else last
        before += piece.rows
    return last


def beyond_supply(taken: Mapping[str, float], have: Mapping[str, float]) -> dict[str, float]:
    """Metres by which roles pass what there is of them; a role not in `have` has no limit."""
    return {one: m - have[one] for one, m in taken.items() if one in have and m > have[one] + 1e-6}


def _share(run: Run) -> float:
    whole = sum(one.share * one.ends for one in run.strands)
    own = sum(one.share * one.ends for one in run.strands if one.role == "main")
    return own / whole if whole else 0.0
