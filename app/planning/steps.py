"""The working of a plan: how its parts and allowances add up to the need and the odds."""

from app.craft.figure import Figure
from app.craft.working import Step
from app.planning.hours import hours_step
from app.planning.learning import Learnt
from app.planning.netting import GroupTally, PlanTally


def plan_steps(tally: PlanTally, need: Figure, learnt: Learnt) -> tuple[Step, ...]:
    """The sum of the plan in metres, its hours, and for each group its supply and margin."""
    parts = [(one.part.name, role.need.value) for one in tally.needs for role in one.roles]
    extra = [(line.name, line.m) for one in tally.groups for line in one.allowances]
    summed: dict[str, float] = {}
    for name, metres in [*parts, *extra]:
        summed[name] = summed.get(name, 0.0) + metres
    how = " + ".join(f"{metres:.1f} {name}" for name, metres in summed.items())
    steps = [Step("Needed in all", how, need.value, "m", need.u)]
    stitches = sum(one.part.copies * one.stitches for one in tally.needs if one.stitches)
    steps += [hours_step(stitches, need.value, learnt)] if stitches else []
    for group in tally.groups:
        steps += _group_steps(group)
    return tuple(steps)


def _group_steps(group: GroupTally) -> list[Step]:
    names = [("knitted in", group.used_m), ("promised", group.promised_m)]
    names.append(("reserve", sum(group.reserved.values())))
    how = " + ".join(f"{metres:.1f} {name}" for name, metres in names if metres)
    supply, margin = group.supply, group.margin
    steps = [Step("To count on", how or "nothing promised", supply.value, "m", supply.u)]
    cause = f"; most of the ± is {margin.chief_cause}" if margin.chief_cause else ""
    how = f"{supply.value:.1f} − {group.need.value:.1f}{cause}"
    source = "errors added by their causes, JCGM 100:2008"
    steps.append(Step("Left over or missing", how, margin.value, "m", margin.u, source))
    return steps
