"""Which yarn knits which row where yarns take turns: the one place where a sequence meets the rows.

Need, metres of a row, picture and working all ask `in_turns`. Copies of a part are knit alike.
"""

from collections.abc import Iterable, Iterator
from dataclasses import replace
from functools import lru_cache
from itertools import cycle, groupby, islice

from app.book.sequence import Sequence, SequenceYarn
from app.book.shape import Run, Strand
from app.craft.alternate import alternate, ramp
from app.planning.schedule import AnyRun, Rows, row_stitches


def in_turns(runs: tuple[Run, ...], sequence: Sequence | None) -> tuple[AnyRun, ...]:
    """The runs of a part with each row in the yarn whose turn it is; as they are without one."""
    return _split(runs, sequence) if sequence else runs


@lru_cache(maxsize=512)
def turns(runs: tuple[Run, ...], sequence: Sequence) -> tuple[str, ...]:
    """The role that knits each row in place of the sequence's own, from the first row on.

    Before a fade only the yarns that leave are knit, after it only those that stay.
    """
    taken = strand_stitches(runs, sequence.role)
    first, last = place_in(len(taken), sequence)
    if sequence.kind == "stripes":
        middle = _stripes(sequence, last - first)
    else:
        middle = _shared(sequence, taken[first:last], sequence.yarns)
    before, after = [sequence.role] * first, [sequence.role] * (len(taken) - last)
    if sequence.kind == "fade":
        before = _shared(sequence, taken[:first], _ending(sequence.yarns, leaving=True))
        after = _shared(sequence, taken[last:], _ending(sequence.yarns, leaving=False))
    return (*before, *middle, *after)


def place_in(rows: int, sequence: Sequence) -> tuple[int, int]:
    """The rows of a sequence in a piece of so many, as a slice: it ends with the piece at last."""
    last = min(rows, rows if sequence.to_row is None else sequence.to_row)
    return min(max(sequence.from_row - 1, 0), last), last


@lru_cache(maxsize=64)
def strand_stitches(runs: tuple[Run, ...], role: str) -> tuple[float, ...]:
    """Stitches' worth of yarn that the strands of a role take in each row."""
    found: list[float] = []
    for run in runs:
        held = sum(one.share * one.ends for one in run.strands if one.role == role)
        found += [row_stitches(run, row) * held for row in range(run.rows)]
    return tuple(found)


def in_blocks(rows: Iterable[float], block_rows: int) -> list[float]:
    """Rows joined to what is knit between two changes of yarn; the last may be shorter."""
    each, rows = max(1, block_rows), tuple(rows)
    return [sum(rows[at : at + each]) for at in range(0, len(rows), each)]


def _shared(
    sequence: Sequence, rows: tuple[float, ...], yarns: tuple[SequenceYarn, ...]
) -> list[str]:
    """The role of each row by the rule of `alternate`; without a share, the sequence's own."""
    blocks = in_blocks(rows, sequence.block_rows)
    begin, end = [one.share for one in yarns], [one.share_to for one in yarns]
    if sequence.spiral:
        begin = end = [1.0 for _ in yarns]
    if not sum(begin) or not sum(end):
        return [sequence.role] * len(rows)
    found = alternate(blocks, ramp(begin, end, len(blocks)))
    spread = (yarns[one].role for one in found for _ in range(max(1, sequence.block_rows)))
    return list(islice(spread, len(rows)))


def _ending(yarns: tuple[SequenceYarn, ...], leaving: bool) -> tuple[SequenceYarn, ...]:
    """The yarns of one end of a fade, with the shares they have there all along."""
    found = []
    for one in yarns:
        share = one.share if leaving else one.share_to
        if share == max(one.share, one.share_to):
            found.append(replace(one, share=share, share_to=share))
    return tuple(found)


def _stripes(sequence: Sequence, rows: int) -> list[str]:
    bands = [one.role for one in sequence.bands for _ in range(one.rows)]
    return list(islice(cycle(bands), rows)) if bands else [sequence.role] * rows


@lru_cache(maxsize=256)
def _split(runs: tuple[Run, ...], sequence: Sequence) -> tuple[AnyRun, ...]:
    roles, found = iter(turns(runs, sequence)), list[AnyRun]()
    for run in runs:
        found += _rows_of(run, sequence.role, list(islice(roles, run.rows)))
    return tuple(found)


def _rows_of(run: Run, own: str, roles: list[str]) -> Iterator[Rows]:
    at, step = 0, (run.stitches_to - run.stitches) / max(1, run.rows)
    for role, alike in groupby(roles):
        until = at + sum(1 for _ in alike)
        ends = run.stitches + step * at, run.stitches + step * until
        yield Rows(until - at, *ends, run.pattern, _strands(run.strands, own, role))
        at = until


def _strands(strands: tuple[Strand, ...], own: str, role: str) -> tuple[Strand, ...]:
    """The strands of a row with another role in place of one; a role that is in it already with as
    many ends takes the stitches of both."""
    found: dict[tuple[str, int], Strand] = {}
    for one in strands:
        now = replace(one, role=role if one.role == own else one.role)
        before = found.get((now.role, now.ends))
        share = now.share + (before.share if before else 0.0)
        found[now.role, now.ends] = replace(now, share=share)
    return tuple(found.values())
