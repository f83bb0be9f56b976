"""The rows of a piece one by one, as they are told to the one who knits them: how many stitches,
what changes, in which stitch pattern, with which yarn, and where a new skein is joined."""

from dataclasses import dataclass

from app.craft.constructions.drawing import DrawnPiece
from app.planning.knitting.shaped import row_changes
from app.planning.needs import PartNeed
from app.planning.picture_drawn import same_runs
from app.planning.picture_rows import Knit, Thread
from app.planning.places import in_round
from app.planning.plan_sheet import begun
from app.planning.schedule import schedule


@dataclass(frozen=True, slots=True)
class StripRow:
    """A row, from 1: the stitches on the needle after it and what changed by it in words, empty
    where nothing did; `counted` is False where the words of the piece tell its shaping in a way of
    their own. `joins` are the skeins that are new in it, by their holdings."""

    number: int
    stitches: int
    change: str
    counted: bool
    pattern: str
    threads: tuple[Thread, ...]
    joins: tuple[str, ...]


def strip(
    need: PartNeed, knit: list[Knit], drawn: DrawnPiece | None = None
) -> tuple[StripRow, ...]:
    """Every row of one piece of a part; `knit` is what each is knit with, `drawn` the piece it was
    drawn as. None for a part without rows."""
    runs = schedule(need.part.shape, need.gauge, need.part.worked) if need.gauge else ()
    if not runs:
        return ()
    piece = drawn if drawn and same_runs(need.part, drawn) else None
    changes = row_changes(runs, in_round(need.part), piece)
    patterns = [run.pattern for run in runs for _ in range(run.rows)]
    words = _with_edges(
        need, [one.words for one in changes], runs[0].stitches, runs[-1].stitches_to
    )
    joins, stitches, found = _joins(knit), runs[0].stitches, []
    for at, change in enumerate(changes):
        stitches += change.stitches
        row = StripRow(
            at + 1,
            stitches,
            words[at],
            change.counted,
            patterns[at],
            knit[at].threads,
            joins[at],
        )
        found.append(row)
    return tuple(found)


def _with_edges(need: PartNeed, words: list[str], first: int, last: int) -> list[str]:
    """How the piece is begun and ended, with the words of its first row and its last; of a piece
    with no edges it is not known."""
    before = "" if need.part.edges == "none" else f"{begun(need.part).lower()} {first}"
    after = f"then cast off {last}" if "off" in need.part.edges else ""
    words = [", ".join(filter(None, (before, words[0]))), *words[1:]]
    return [*words[:-1], ", ".join(filter(None, (words[-1], after)))]


def _joins(knit: list[Knit]) -> list[tuple[str, ...]]:
    """The skeins that are new in each row; those of the first were there."""
    seen, found = set[str](), list[tuple[str, ...]]()
    for at, row in enumerate(knit):
        skeins = [one.holding_id for one in row.threads if one.holding_id]
        new = [one for one in dict.fromkeys(skeins) if one not in seen]
        found.append(tuple(new) if at else ())
        seen.update(new)
    return found
