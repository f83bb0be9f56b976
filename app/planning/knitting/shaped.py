"""What each row of a piece gains or loses, in stitches and in words: as its shaping is told."""

from dataclasses import dataclass, replace
from itertools import pairwise

from app.book.shape import Run
from app.craft.constructions.drawing import DrawnPiece, KnitRun
from app.craft.shaped_rows import shaped_rows
from app.craft.shaping import shaping_phrase

PLACES = (2, 1, 4, 8, 3, 5, 6, 7, 9, 10, 11, 12)
"""At how many places of a row a stitch may be shaped; those of most pieces first."""

STEP = 3
"""So many stitches gone from a flat row at once were cast off."""

AS_TOLD = "shape as told"


@dataclass(frozen=True, slots=True)
class Change:
    """Stitches gained by a row, below zero where they are lost, and that in words. `counted` is
    False where the words of the piece say it in a way of their own: then it is about so many."""

    stitches: int = 0
    words: str = ""
    counted: bool = True


def row_changes(runs: tuple[Run, ...], tube: bool, drawn: DrawnPiece | None) -> tuple[Change, ...]:
    """The change in each row after the cast-on; `drawn` is the piece where its words tell how its
    shaping is spread."""
    told = " ".join(drawn.words).lower() if drawn else ""
    own = drawn.runs if drawn else tuple(_plain(run) for run in runs)
    found: list[Change] = []
    for run in own:
        counted = all(one.counted for one in found)
        found += _inside(run, tube, told, counted)
    at = 0
    for before, run in pairwise(own):
        at += before.rows
        found[at] = _then(_between(before, run), found[at])
    return tuple(found)


def _plain(run: Run) -> KnitRun:
    return KnitRun(run.rows, run.stitches, run.stitches_to, run.pattern)


def _inside(run: KnitRun, tube: bool, told: str, counted: bool) -> list[Change]:
    """The rows of a run; none is counted after shaping that is told in a way of its own."""
    inner = run.gap - run.gap_to
    changes = [one for one in (run.stitches_to - run.stitches - inner, inner) if one]
    ends = [_places(run, one, tube, told) if told else 2 for one in changes]
    spread = [
        shaped_rows(run.rows, one, run.worked, tube, many or 2)
        for one, many in zip(changes, ends, strict=True)
    ]
    rows = [sum(each) for each in zip(*spread, strict=True)] if spread else [0] * run.rows
    if counted and all(ends):
        return [Change(one, _words(one, tube)) for one in rows]
    return [Change(one, AS_TOLD, counted=False) for one in rows]


def _places(run: KnitRun, change: int, tube: bool, told: str) -> int | None:
    """At how many places of a row it is shaped, by the words; None where they say it otherwise."""
    for ends in PLACES:
        phrase, _ = shaping_phrase(run.rows, change, run.worked, tube, "@", ends)
        if _stands(phrase.partition("@ ")[2] or phrase, told):
            return ends
    return None


def _stands(phrase: str, told: str) -> bool:
    """Whether shaping is told in just these words, and not in more of them."""
    at = told.find(phrase.lower())
    while at >= 0:
        if not told.startswith((",", " ("), at + len(phrase)):
            return True
        at = told.find(phrase.lower(), at + 1)
    return False


def _between(before: KnitRun, after: KnitRun) -> Change:
    change = after.stitches - before.stitches_to
    if change < 0:
        return Change(change, f"cast off {-change}")
    return Change(change, f"{change} more, spread evenly" if change else "")


def _words(stitches: int, tube: bool) -> str:
    if stitches <= -STEP and not tube:
        return f"cast off {-stitches}"
    return f"{abs(stitches)} {'more' if stitches > 0 else 'fewer'}" if stitches else ""


def _then(one: Change, other: Change) -> Change:
    words = ", then ".join(filter(None, (one.words, other.words)))
    return replace(other, stitches=one.stitches + other.stitches, words=words)
