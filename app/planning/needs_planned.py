"""The need of a part as it is planned: metres for each of its yarn roles, from its schedule and
gauge, before anything was learned from garments that were finished.

All parts knit to one gauge share the error of that gauge; parts worked out from few body
measurements share the error of the shape; a stated amount is corrected by what garments really
take of what is printed.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from math import exp, hypot, log
from typing import Literal

from app.book.gauge import Gauge
from app.book.plan import Part, Plan
from app.book.shape import Measured, Metres, Rectangle, Run, Stated, Trapezoid
from app.craft.fabric import KS_DRY, KS_WET, loop_cm
from app.craft.figure import Figure
from app.craft.working import Standing, Step
from app.planning.beyond import beyond, beyond_amount, in_all, unmeasured
from app.planning.edges import cast_off_m, edge_step, edges
from app.planning.gauges import gauge_from_grist
from app.planning.knitting.cast_on import as_cast_on
from app.planning.schedule import AnyRun, alike_together, schedule, stitches_in
from app.planning.sequence_rows import in_turns
from app.planning.shares import share_causes
from app.planning.swatches import holds_extras_of, taken_step, yarn_in_stitch
from app.planning.yarns import Lots

RULE = "Tijdeman 1980: each yarn in its turn, never further than a block from its share"

STATED_MEDIAN, STATED_LOW, STATED_HIGH = 0.83, 0.68, 1.02
"""What garments really take of a stated amount: median and 90 % range (practice)."""

STATED_CAUSE = "how far stated amounts run high"

Basis = Literal["gauge", "swatch", "stated", ""]
"""What the yarn of a part is reckoned from: the geometry of a gauge, a swatch that was weighed or
unravelled, a stated amount; empty for a bare amount."""


@dataclass(frozen=True, slots=True)
class RoleNeed:
    """Metres one role of a part takes, in all its copies, and the yarn meant for it."""

    role: str
    need: Figure
    yarn_id: str | None


@dataclass(frozen=True, slots=True)
class PartNeed:
    """A part with its stitches and rows (of one copy), its gauge, the yarn in a stitch (`loop`, in
    cm) and the need of each role.

    `known` is False where no gauge was given and none could be assumed; `held` is the stitch
    pattern whose extras the yarn in a stitch holds.
    """

    part: Part
    gauge: Gauge | None
    loop: Figure | None
    stitches: int | None
    rows: int | None
    roles: tuple[RoleNeed, ...]
    working: tuple[Step, ...]
    known: bool = True
    held: str = ""
    basis: Basis = ""


def planned_needs(plan: Plan, parts: list[Part], lots: Lots) -> tuple[PartNeed, ...]:
    """The need of each part of a plan, in m."""
    shares = share_causes(plan, parts)
    return tuple(_need(plan, part, lots, shares.get(part.id, {})) for part in parts)


def meant_yarn(plan: Plan, part: Part, role: str) -> str | None:
    """The yarn meant for a role: the part's own choice, else the plan's, else none."""
    for choice in (*part.yarns, *plan.yarns):
        if choice.role == role:
            return choice.yarn_id
    return None


def _need(plan: Plan, part: Part, lots: Lots, shares: Mapping[str, float]) -> PartNeed:
    match part.shape:
        case Metres(mm=mm):
            return _amount(plan, part, Figure(mm / 1000 * part.copies, "m"), ())
        case Stated(mm=mm):
            return _stated(plan, part, mm / 1000 * part.copies, shares)
        case _:
            return _knit(plan, part, lots)


def _amount(plan: Plan, part: Part, need: Figure, steps: tuple[Step, ...]) -> PartNeed:
    role = RoleNeed("main", need, meant_yarn(plan, part, "main"))
    return PartNeed(part, None, None, None, None, (role,), steps)


def stated_factor() -> Figure:
    """What is really taken of a stated amount, as a share: the mean of a log-normal with median
    0.83 and 90 % between 0.68 and 1.02 (common practice, no source)."""
    sigma = log(STATED_HIGH / STATED_LOW) / (2 * 1.6448536)
    mean = STATED_MEDIAN * exp(sigma * sigma / 2)
    return Figure(mean, "share", {STATED_CAUSE: mean * sigma})


def _stated(plan: Plan, part: Part, stated_m: float, shares: Mapping[str, float]) -> PartNeed:
    need = stated_factor().scaled(stated_m, "m")
    for cause, metres in shares.items():
        need = need.unsure(cause, stated_factor().value * metres)
    how = f"{stated_m:.0f} m stated × {stated_factor().value:.3f}"
    source = "common practice, no source: 68 to 102 % of what is stated, 9 times in 10"
    source += "; its share of the whole is unsure too" if shares else ""
    step = Step(f"Yarn for {part.name}", how, need.value, "m", need.u, source, "practice")
    whole, more = beyond_amount(part, need, f"{plan.name}, {part.name}")
    return replace(_amount(plan, part, whole, (step, *more)), basis="stated")


def _knit(plan: Plan, part: Part, lots: Lots) -> PartNeed:
    gauge, loop, gauge_steps = _fabric(plan, part, lots)
    if gauge is not None and (kept := as_cast_on(plan, part, loop)):
        loop, gauge_steps = kept
    if gauge is None:
        return PartNeed(part, None, None, None, None, (), gauge_steps, known=False)
    runs = schedule(part.shape, gauge, part.worked)
    knit = in_turns(runs, part.sequence)
    together = alike_together(knit) if part.sequence else knit
    swatch = lots.book.swatch.get(gauge.swatch_id or "")
    held = holds_extras_of(swatch, gauge)
    extra = beyond(part, together, f"{plan.name}, {part.name}", held)
    extra += unmeasured(plan, part, together, swatch)
    edge = edges(part, runs, gauge, loop)
    last = edge.scaled(cast_off_m(part, runs, loop) / edge.value) if edge.value else edge
    roles = tuple(
        RoleNeed(
            role,
            _with_shape(plan, part, metres.scaled(part.copies)),
            meant_yarn(plan, part, role),
        )
        for role, metres in _by_role(knit, in_all(together, extra), loop, edge, last)
    )
    stitches = round(sum(stitches_in(run) for run in runs))
    rows = sum(run.rows for run in runs)
    steps = (
        *gauge_steps,
        *_counted(part, runs, stitches, rows),
        *_taking_turns(part, together),
        *(one.step(loop) for one in extra),
        *((edge_step(part, edge),) if edge.value else ()),
        *(_role_step(part, one, bool(extra), bool(edge.value)) for one in roles),
    )
    basis: Basis = "swatch" if held else "gauge"
    return PartNeed(part, gauge, loop, stitches, rows, roles, steps, held=held, basis=basis)


def _by_role(
    knit: tuple[AnyRun, ...], worked: dict[str, Figure], loop: Figure, edge: Figure, last: Figure
) -> list[tuple[str, Figure]]:
    """Metres of each role in one copy. The cast-off is knit with the yarn of the last row, all
    other edges with that of the first."""
    metres = {role: count.times(loop, "m").scaled(0.01) for role, count in worked.items()}
    first = next(iter(metres), "main")
    metres[first] = metres.get(first, Figure(0.0, "m")) + edge
    ended = knit[-1].strands[0].role if knit and knit[-1].strands else first
    if ended != first:
        metres[first] = metres[first] - last
        metres[ended] = metres[ended] + last
    return [*metres.items()]


def _fabric(plan: Plan, part: Part, lots: Lots) -> tuple[Gauge | None, Figure, tuple[Step, ...]]:
    gauge = part.gauge or plan.gauge
    whose = f"{plan.name}, {part.name}" if part.gauge else plan.name
    swatch = lots.book.swatch.get(gauge.swatch_id or "") if gauge else None
    if gauge is not None and swatch is not None:
        found = yarn_in_stitch(swatch, gauge, lots)
        return gauge, found.loop, (taken_step(swatch, gauge), *found.steps)
    if gauge is not None:
        loop, step = _by_gauge(gauge, whose)
        return gauge, loop, (step,)
    yarn_id = meant_yarn(plan, part, "main")
    tex = lots.tex(yarn_id) if yarn_id else None
    if tex is None:
        step = Step("Yarn in one stitch", "no gauge yet, and no yarn to assume one from", 0.0, "cm")
        return None, Figure(0.0, "cm"), (step,)
    assumed, loop, step = gauge_from_grist(tex, whose)
    return assumed, loop, (step,)


def _by_gauge(gauge: Gauge, whose: str) -> tuple[Figure, Step]:
    ks = KS_WET if gauge.washed else KS_DRY
    loop = loop_cm(gauge.stitches, gauge.rows, gauge.washed)
    u = hypot(loop.u, loop.value * gauge.assumed_pct / 100)
    how = f"√({ks:g} ÷ ({gauge.stitches:g} × {gauge.rows:g} / 100)) cm"
    source = "Munden 1959, " + ("washed and dried flat" if gauge.washed else "not washed")
    source += "; the gauge itself is a guess" if gauge.assumed_pct else ""
    standing: Standing = "assumed" if gauge.assumed_pct else "published"
    step = Step("Yarn in one stitch", how, loop.value, "cm", u, source, standing)
    return Figure(loop.value, "cm", {f"yarn in a stitch, by the gauge of {whose}": u}), step


def _with_shape(plan: Plan, part: Part, need: Figure) -> Figure:
    if not part.shape_u_pct:
        return need
    return need.unsure(f"the shape of {plan.name}", need.value * part.shape_u_pct / 100)


def _counted(part: Part, runs: tuple[Run, ...], stitches: int, rows: int) -> list[Step]:
    how = " + ".join(
        f"{run.rows} rows × ({run.stitches} + {run.stitches_to}) / 2"
        if run.stitches != run.stitches_to
        else f"{run.rows} rows × {run.stitches}"
        for run in runs
    )
    step = Step(f"Stitches in {part.name}", f"{how}; {rows} rows", stitches, "stitches")
    if part.worked is None or not isinstance(part.shape, Rectangle | Trapezoid | Measured):
        return [step]
    across, along = part.worked.width_pct, part.worked.length_pct
    how = f"finished at {across:g} % of its width and {along:g} % of its length off the needles"
    share = 10_000 / (across * along)
    return [Step(f"Size of {part.name} as it is worked", how, share, "of its area"), step]


def _taking_turns(part: Part, knit: tuple[AnyRun, ...]) -> Iterator[Step]:
    """How many rows each yarn knits where they take turns."""
    if part.sequence is None:
        return
    rows: dict[str, int] = {}
    for run in knit:
        for strand in run.strands:
            rows[strand.role] = rows.get(strand.role, 0) + run.rows
    how = ", ".join(f"{count} of {role}" for role, count in rows.items())
    what = f"Rows of {part.name} in each yarn"
    yield Step(what, how, sum(run.rows for run in knit), "rows", source=RULE)


def _role_step(part: Part, role: RoleNeed, extra: bool, edge: bool) -> Step:
    what = f"Yarn for {part.name}" + ("" if role.role == "main" else f", {role.role}")
    how = "stitches × yarn in a stitch"
    how += " + what is beyond them" if extra else ""
    how += " + edges" if edge else ""
    how += f", × {part.copies} pieces" if part.copies > 1 else ""
    return Step(what, how, role.need.value, "m", role.need.u)
