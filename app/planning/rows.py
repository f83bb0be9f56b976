"""The yarn in each row of a part: what tells where a skein runs out."""

from app.book.gauge import Gauge
from app.book.plan import Part
from app.book.shape import Strand
from app.craft.figure import Figure
from app.planning.beyond import beyond, in_all
from app.planning.edges import cast_off_m, cast_on_m
from app.planning.needs import PartNeed, RoleNeed
from app.planning.schedule import AnyRun, Rows, row_stitches, schedule
from app.planning.sequence_rows import in_turns


def metres_per_row(part: Part, gauge: Gauge, loop: Figure, held: str = "") -> list[float]:
    """Metres of all yarns in each row of one copy, from the first; none for a bare amount.

    `loop` is the yarn in a stitch in cm, which holds the extras of the pattern `held`. The first
    row has the cast-on with it, the last the cast-off; a seam is sewn afterwards and belongs to no
    row.
    """
    runs = schedule(part.shape, gauge, part.worked)
    found, a_stitch = list[float](), dict[tuple[str, tuple[Strand, ...]], float]()
    for run in in_turns(runs, part.sequence):
        alike = run.pattern, run.strands
        if alike not in a_stitch:
            a_stitch[alike] = _in_a_stitch(part, run, loop, held)
        found += [row_stitches(run, row) * a_stitch[alike] for row in range(run.rows)]
    if found:
        found[0] += cast_on_m(part, runs, gauge, loop)
        found[-1] += cast_off_m(part, runs, loop)
    return found


def role_rows(need: PartNeed, role: RoleNeed) -> list[float]:
    """Metres a role of a part takes in each row of one copy; none for a bare amount."""
    if need.gauge is None or need.loop is None:
        return []
    runs = in_turns(schedule(need.part.shape, need.gauge, need.part.worked), need.part.sequence)
    rows = [run for run in runs for _ in range(run.rows)] * need.part.copies
    metres = metres_per_row(need.part, need.gauge, need.loop, need.held) * need.part.copies
    return of_role(role, metres, rows)[: len(rows) // need.part.copies]


def stitches_per_row(need: PartNeed) -> list[float]:
    """Stitches in each row of one copy of a part; none for a bare amount."""
    if need.gauge is None:
        return []
    runs = schedule(need.part.shape, need.gauge, need.part.worked)
    return [row_stitches(run, row) for run in runs for row in range(run.rows)]


def of_role(role: RoleNeed, metres: list[float], rows: list[AnyRun]) -> list[float]:
    """Metres a role takes in each row of all copies: its share of the row, and of what it needs in
    all. Seams are spread over the rows. `rows` are the runs the rows belong to, one for each."""
    own = [m * _share(run, role.role) for m, run in zip(metres, rows, strict=True)]
    stretch = role.need.value / sum(own) if sum(own) else 0.0
    return [one * stretch for one in own]


def _in_a_stitch(part: Part, run: AnyRun, loop: Figure, held: str) -> float:
    """Metres of all yarns in a stitch of a run, with its share of what is beyond the stitches."""
    one = Rows(1, 1.0, 1.0, run.pattern, run.strands)
    took = in_all((one,), beyond(part, (one,), part.name, held)).values()
    return sum(each.value for each in took) * loop.value / 100


def _share(run: AnyRun, role: str) -> float:
    whole = sum(one.share * one.ends for one in run.strands)
    own = sum(one.share * one.ends for one in run.strands if one.role == role)
    return own / whole if whole else 0.0
