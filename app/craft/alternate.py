"""Several yarns turn and turn about: which one knits the next rows, so that each takes its share.

A *block* is what is knit between two allowed changes: a round, or two rows where the piece is
worked flat. The rule is Tijdeman's for the chairman assignment problem (1980): with n yarns and
blocks alike no yarn is ever further from its target than 1 − 1/(2n − 2) of a block, whatever the
shares. Where blocks differ it is the same times the longest: proved for two yarns, for more tested.
"""

from collections.abc import Sequence
from itertools import accumulate

DUST = 1e-9
"""In shares of the longest block: less is rounding."""


def furthest(yarns: int) -> float:
    """How far a yarn strays from its target at most, in longest blocks; ValueError for no yarn."""
    if yarns < 1:
        raise ValueError("rows are knit in one yarn at least")
    return 1 - 1 / (2 * yarns - 2) if yarns > 1 else 0.0


def alternate(blocks: Sequence[float], shares: Sequence[Sequence[float]]) -> tuple[int, ...]:
    """For each block the yarn that knits it, from 0.

    `blocks` is the yarn each block takes, in any unit, `shares` of each yarn its share of each
    block. ValueError where a block takes less than nothing or its shares do not add up to 1.
    """
    _sound(blocks, shares)
    targets = running(blocks, shares)
    longest = max(blocks, default=0.0)
    stray, dust = furthest(len(shares)) * longest, DUST * longest
    used, due = [0.0] * len(shares), [0] * len(shares)
    turns = []
    for at, block in enumerate(blocks):
        soonest, chosen = None, 0
        for yarn, target in enumerate(targets):
            behind = target[at] - used[yarn]
            if behind < block - stray - dust:
                continue
            wanted, by = used[yarn] + stray - dust, due[yarn]
            while by < len(blocks) and target[by] < wanted:
                by += 1
            due[yarn] = by
            if soonest is None or (by, -behind) < soonest:
                soonest, chosen = (by, -behind), yarn
        used[chosen] += block
        turns.append(chosen)
    return tuple(turns)


def running(blocks: Sequence[float], shares: Sequence[Sequence[float]]) -> list[list[float]]:
    """What each yarn should have taken by the end of each block, in the unit of the blocks."""
    return [
        list(accumulate(block * share for block, share in zip(blocks, own, strict=True)))
        for own in shares
    ]


def taken(blocks: Sequence[float], turns: Sequence[int], yarns: int) -> list[float]:
    """What each yarn takes in all, in the unit of the blocks."""
    found = [0.0] * yarns
    for block, yarn in zip(blocks, turns, strict=True):
        found[yarn] += block
    return found


def strays(
    blocks: Sequence[float], shares: Sequence[Sequence[float]], turns: Sequence[int]
) -> list[float]:
    """How far each yarn is from its target where it is furthest, in the unit of the blocks."""
    found = []
    for yarn, target in enumerate(running(blocks, shares)):
        own = (block if yarn == turn else 0.0 for block, turn in zip(blocks, turns, strict=True))
        apart = (abs(want - got) for want, got in zip(target, accumulate(own), strict=True))
        found.append(max(apart, default=0.0))
    return found


def ramp(begin: Sequence[float], end: Sequence[float], blocks: int) -> list[list[float]]:
    """The share of each yarn in each block: those of `begin` in the first, those of `end` in the
    last, evenly between, made to add up to 1. ValueError where nothing is shared out at an end."""
    for ends in (begin, end):
        if min(ends, default=0.0) < 0 or sum(ends) <= 0:
            raise ValueError("shares are 0 or more, and not all of them 0")
    steps = max(1, blocks - 1)
    first, last = ([one / sum(ends) for one in ends] for ends in (begin, end))
    return [
        [a + (b - a) * at / steps for at in range(blocks)] for a, b in zip(first, last, strict=True)
    ]


def _sound(blocks: Sequence[float], shares: Sequence[Sequence[float]]) -> None:
    furthest(len(shares))
    if min(blocks, default=0.0) < 0:
        raise ValueError("a row takes no less than nothing")
    for at, together in enumerate(zip(*shares, strict=True), 1):
        if min(together) < 0 or abs(sum(together) - 1) > 1e-6:
            raise ValueError(f"the shares of block {at} do not add up to 1")
    if any(len(own) != len(blocks) for own in shares):
        raise ValueError("every yarn has a share of every block")
