"""Shaping row by row: on which rows the work of a run in words gains or loses stitches."""

from itertools import pairwise

from app.craft.shaping import BOTH_ENDS, Spacing, spaced, turns_of


def shaped_rows(
    rows: int, change: int, worked: float, in_round: bool, ends: int = BOTH_ENDS
) -> tuple[int, ...]:
    """What each row gains, or loses below zero, as `shaping_phrase` tells it in words: `change` in
    all, one stitch at each of `ends` places at a time, an odd one on the last of those rows.
    `worked` are the stitches of all the rows. ValueError for less than one row."""
    if rows < 1:
        raise ValueError(f"a run has at least one row, not {rows}")
    events, odd = divmod(abs(change), ends)
    if not 0 < events <= rows:
        return _steep(rows, change, in_round, ends)
    sign = 1 if change > 0 else -1
    at = _rows_shaped(spaced(events, rows, in_round), worked, ends)
    found = [sign * ends if row in at else 0 for row in range(rows)]
    found[max(at)] += sign * odd
    return tuple(found)


def _rows_shaped(spacing: Spacing, worked: float, ends: int) -> frozenset[int]:
    """The rows, from 0: the first is shaped, and its gap is left over at the end."""
    turns = turns_of(spacing, worked, ends)
    turn = [gap for times, gap in spacing for _ in range(times // turns)]
    left = [gap for times, gap in spacing for _ in range(times % turns)] if turns > 1 else []
    gaps = (turn * turns + left)[1:]
    found = [0]
    for gap in gaps:
        found.append(found[-1] + gap)
    return frozenset(found)


def _steep(rows: int, change: int, in_round: bool, ends: int) -> tuple[int, ...]:
    """Cast off in steps where flat rows begin, else spread as evenly as whole stitches allow."""
    many, times = abs(change), rows // 2
    stepped = change < 0 and not in_round and ends <= BOTH_ENDS and ends < many
    if stepped and many % ends == 0 and times > 1:
        each, longer = divmod(many // ends, times)
        sizes = [each] * (times - longer) + [each + 1] * longer
        steps = [-ends * sizes[row // 2] if row % 2 == 0 else 0 for row in range(2 * times)]
        return (*steps, *(0 for _ in range(rows - 2 * times)))
    done = [round(change * row / rows) for row in range(rows + 1)]
    return tuple(after - before for before, after in pairwise(done))
