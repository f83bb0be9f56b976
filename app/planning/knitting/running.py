"""What a garment on the needles needs: what is knit already took what it took, and the rows to
come are expected to take as much more or less than planned as those behind them."""

from app.book.plan import Plan
from app.craft.figure import Figure
from app.planning.groups import Group
from app.planning.knitting.balls import on_needles, pace_without
from app.planning.knitting.course import courses
from app.planning.knitting.done import metres_done, rows_done
from app.planning.knitting.pace import Pace
from app.planning.needs import PartNeed
from app.planning.yarns import Lots


def running_needs(
    lots: Lots,
    plan: Plan,
    needs: tuple[PartNeed, ...],
    groups: tuple[Group, ...],
    knit: list[Figure],
) -> list[Figure] | None:
    """The need of each group in m, given what of it is `knit` already; None where no row
    is known to be done."""
    done = rows_done(lots.book, plan.id)
    if not any(done.values()):
        return None
    ways = courses(plan, needs, groups)
    balls = on_needles(lots, plan.id, ways)
    found = []
    for way, already in zip(ways, knit, strict=True):
        planned = sum((role.need for _, role in way.group.roles), Figure(0.0, "m"))
        mine = tuple(one for one in balls if one.course.group == way.group)
        share = planned.u / planned.value if planned.value > 0 else 0.0
        told = pace_without(share, mine, None, lots.book)
        behind = metres_done(way, done)
        ahead = max(0.0, planned.value - behind)
        taken = _taken(plan, way.group, already, behind, told)
        found.append(taken + to_come(plan, way.group, ahead, told))
    return found


def _taken(plan: Plan, group: Group, already: Figure, behind_m: float, told: Pace) -> Figure:
    """Metres in the rows done: what the wool book has, or what those rows will have taken where it
    does not know of all of them yet, since a ball was not weighed after them."""
    expected = to_come(plan, group, behind_m, told)
    return already if already.value >= expected.value else expected


def to_come(plan: Plan, group: Group, planned_m: float, told: Pace) -> Figure:
    """Metres that so many planned ones to come will really take."""
    yarn = group.yarn_ids[0] if group.yarn_ids else "yarn"
    cause = f"what {plan.name} really takes of {yarn}"
    return Figure(planned_m * told.value, "m", {cause: planned_m * told.u})
