"""A part on the needles cut in two at a row: what is knit stays as it was, what is to come may be
knit otherwise."""

from dataclasses import dataclass, replace

from app.book.gauge import Gauge
from app.book.plan import Part, RoleYarn
from app.book.shape import Run, Runs
from app.book.words import Edges
from app.craft.constructions.drawing import DrawnPiece
from app.planning.knitting.shaped import row_changes
from app.planning.needs import PartNeed
from app.planning.picture_drawn import same_runs
from app.planning.places import in_round
from app.planning.schedule import schedule

BEGUN: dict[Edges, Edges] = {
    "cast on": "cast on",
    "cast on and off": "cast on",
    "cast on, stretchy cast-off": "cast on",
    "cast on and seams": "cast on and seams",
    "cast on, off and seams": "cast on and seams",
    "cast on, stretchy cast-off and seams": "cast on and seams",
}
ENDED: dict[Edges, Edges] = {
    "cast on and off": "cast off",
    "cast off": "cast off",
    "picked up and cast off": "cast off",
    "cast on, off and seams": "cast off and seams",
    "cast off and seams": "cast off and seams",
    "cast on, stretchy cast-off": "stretchy cast-off",
    "cast on, stretchy cast-off and seams": "stretchy cast-off",
    "stretchy cast-off": "stretchy cast-off",
    "picked up, stretchy cast-off": "stretchy cast-off",
}
"""The edges of the lower and of the upper half; none where they are not named."""


@dataclass(frozen=True, slots=True)
class Otherwise:
    """How a part is knit from here on: at a `gauge` of its own, in another yarn, over so many
    `rows` more. None of it: as it was; with another gauge and no rows, as long as it was to be."""

    gauge: Gauge | None = None
    yarn_id: str | None = None
    rows: int | None = None


def split(
    need: PartNeed, rows: int, how: Otherwise, new_id: str, drawn: DrawnPiece | None = None
) -> tuple[Part, Part]:
    """What is knit of a part after `rows` of its rows, and the rest as it will be knit. ValueError
    where nothing of it is knit, or nothing is left."""
    part, now = need.part, need.gauge
    if now is None or need.rows is None or not 0 < rows < need.rows:
        raise ValueError("a part is cut in two between its first row and its last")
    runs = schedule(part.shape, now, part.worked)
    piece = drawn if drawn and same_runs(part, drawn) else None
    begun, rest = _cut(runs, rows, on_needle(runs, rows, part, piece))
    rest = _as_long(rest, how, how.gauge.rows / now.rows if how.gauge else 1.0)
    knit = replace(part, shape=Runs(begun), edges=BEGUN.get(part.edges, "none"))
    to_come = replace(
        part,
        id=new_id,
        name=f"{part.name}, from {'round' if in_round(part) else 'row'} {rows + 1}",
        shape=Runs(rest),
        position=part.position + 1,
        gauge=how.gauge or part.gauge,
        yarns=_yarns(part, how.yarn_id),
        edges=ENDED.get(part.edges, "none"),
    )
    return knit, to_come


def on_needle(runs: tuple[Run, ...], rows: int, part: Part, drawn: DrawnPiece | None) -> int:
    """Stitches on the needle after so many rows."""
    gained = row_changes(runs, in_round(part), drawn)[:rows]
    return runs[0].stitches + sum(one.stitches for one in gained)


def _cut(
    runs: tuple[Run, ...], rows: int, stitches: int
) -> tuple[tuple[Run, ...], tuple[Run, ...]]:
    begun: list[Run] = []
    rest: list[Run] = []
    for run in runs:
        if run.rows <= rows:
            begun.append(run)
        elif rows <= 0:
            rest.append(run)
        else:
            begun.append(replace(run, rows=rows, stitches_to=stitches))
            rest.append(replace(run, rows=run.rows - rows, stitches=stitches))
        rows -= run.rows
    return tuple(begun), tuple(rest)


def _as_long(runs: tuple[Run, ...], how: Otherwise, share: float) -> tuple[Run, ...]:
    """The rows to come in another number, each run in its share of them, at least one row."""
    whole = sum(run.rows for run in runs)
    wanted = round(whole * share) if how.rows is None else how.rows
    found: list[Run] = []
    left, of = wanted, whole
    for run in runs:
        own = max(1, round(left * run.rows / of))
        found.append(replace(run, rows=own))
        left, of = left - own, of - run.rows
    return tuple(found)


def _yarns(part: Part, yarn_id: str | None) -> tuple[RoleYarn, ...]:
    if yarn_id is None:
        return part.yarns
    others = tuple(one for one in part.yarns if one.role != "main")
    return (RoleYarn("main", yarn_id), *others)
