"""One pass over the plans in their order: promises, reserves, and what each group can count on.

A share of a skein carries its share of the skein's own error. Where two plans use one skein, the
later one's supply is what the first leaves: it carries what the first may take beyond its reserve.
"""

from dataclasses import dataclass, field

from app.book.plan import Plan
from app.craft.figure import Figure, total
from app.craft.odds import normal_quantile, spill_over
from app.planning.allowances import allowances, allowed, knit_need
from app.planning.answers import Allowance, Held
from app.planning.cover import TOLERANCE_M, Shelf, promises_to
from app.planning.groups import Group, groups
from app.planning.needs import PartNeed, needs_of
from app.planning.turn import draws
from app.planning.used import Used
from app.planning.yarns import Lots

RESERVE_PASSES = 3
"""What is set aside is unsure itself, so the reserve is topped up twice."""

KNITTED = "yarn knitted in"
USED_SHARE = 0.02
"""Standard uncertainty of yarn already knitted in, as a share (practice)."""


@dataclass(slots=True)
class GroupTally:
    """A group with what it needs and what it can count on, in m; `knit` is the need of its rows."""

    group: Group
    allowances: tuple[Allowance, ...]
    knit: Figure
    need: Figure
    supply: Figure
    used_m: float
    promised_m: float
    reserve_m: float = 0.0
    reserved: dict[str, float] = field(default_factory=dict)
    met: set[str] = field(default_factory=set)

    @property
    def margin(self) -> Figure:
        return self.supply - self.need


@dataclass(slots=True)
class PlanTally:
    """A plan's needs and groups, and the odds asked of it (0 to 1)."""

    plan: Plan
    needs: tuple[PartNeed, ...]
    groups: list[GroupTally]
    sureness: float


@dataclass(slots=True)
class Netting:
    """The pass itself. `users` remembers, for each holding, who takes how many metres of it."""

    lots: Lots
    shelf: Shelf
    used: Used
    users: dict[str, list[tuple[Plan, GroupTally, float]]] = field(default_factory=dict)
    held: dict[str, list[Held]] = field(default_factory=dict)

    def take(self, plan: Plan) -> PlanTally:
        """Net one plan; the plans before it have been taken already."""
        book = self.lots.book
        sureness = (plan.sureness_pct or book.settings.sureness_pct) / 100
        needs = needs_of(plan, book.parts_of.get(plan.id, []), self.lots)
        promises = promises_to(book, plan)
        yarn_of = {one.holding_id: book.holding[one.holding_id].yarn_id for one in promises}
        found = groups(needs, promises, yarn_of)
        used = self.used.shares(plan.id, found)
        knit = [knitted(one) for one in used]
        to_knit = _to_knit(self.lots, plan, needs, found, knit)
        extra = allowances(plan, found, needs, self.lots)
        tallies = [self._tally(plan, *one) for one in zip(found, extra, used, to_knit, strict=True)]
        z = normal_quantile(sureness ** (1 / max(1, len(tallies))))
        for tally in tallies:
            if draws(plan):
                self._reserve(plan, tally, z)
            else:
                tally.supply = tally.need  # a garment that is finished had enough
        return PlanTally(plan, needs, tallies, sureness)

    def _tally(
        self,
        plan: Plan,
        group: Group,
        lines: tuple[Allowance, ...],
        used_m: float,
        to_knit: Figure,
    ) -> GroupTally:
        need = to_knit + allowed(lines)
        tally = GroupTally(group, lines, to_knit, need, knitted(used_m), used_m, 0.0)
        for promise in group.promises:
            metres = self.shelf.covered[promise.id]
            tally.promised_m += metres
            self._give(plan, tally, promise.holding_id, metres, promise.part_id)
        return tally

    def _give(
        self, plan: Plan, tally: GroupTally, holding_id: str, metres: float, part_id: str | None
    ) -> None:
        if metres <= 0:
            return
        stock = self.shelf.stock[holding_id]
        tally.supply = tally.supply + stock.held.scaled(metres / stock.held.value)
        if holding_id not in tally.met:
            tally.met.add(holding_id)
            for other_plan, other, taken in self.users.get(holding_id, []):
                tally.supply = tally.supply - _beyond(other_plan, other, taken)
        self.users.setdefault(holding_id, []).append((plan, tally, metres))
        self.held.setdefault(holding_id, []).append(Held(plan.id, part_id, metres))

    def _reserve(self, plan: Plan, tally: GroupTally, z: float) -> None:
        """Set aside what no stitch holds and z times the margin's uncertainty, from skeins the
        plan uses, then others of their yarn; nothing while the plan has no yarn promised."""
        if not tally.promised_m:
            return
        for _ in range(RESERVE_PASSES):
            for holding_id in self._reserve_places(tally.group):
                missing = _reserve_missing(tally, z)
                if missing <= TOLERANCE_M:
                    return
                metres = min(missing, self.shelf.free[holding_id])
                self._set_aside(plan, tally, holding_id, metres)

    def _set_aside(self, plan: Plan, tally: GroupTally, holding_id: str, metres: float) -> None:
        tally.reserved[holding_id] = tally.reserved.get(holding_id, 0.0) + metres
        self.shelf.free[holding_id] -= metres
        self._give(plan, tally, holding_id, metres, None)

    def _reserve_places(self, group: Group) -> list[str]:
        touched = dict.fromkeys(one.holding_id for one in group.promises)
        others = (one.id for yarn in group.yarn_ids for one in self.lots.skeins.get(yarn, []))
        places = dict.fromkeys([*touched, *others])
        return [one for one in places if self.shelf.free.get(one, 0.0) > TOLERANCE_M]


def _reserve_missing(tally: GroupTally, z: float) -> float:
    promised = max(tally.promised_m + tally.used_m, tally.knit.value)
    tally.reserve_m = max(0.0, tally.need.value + z * tally.margin.u - promised)
    return tally.reserve_m - sum(tally.reserved.values())


def _to_knit(
    lots: Lots,
    plan: Plan,
    needs: tuple[PartNeed, ...],
    found: tuple[Group, ...],
    knit: list[Figure],
) -> list[Figure]:
    """The need of each group's rows; how that of a garment on the needles is reckoned is brought in
    by the first of them."""
    if plan.state == "being knit":
        from app.planning.knitting.running import running_needs

        running = running_needs(lots, plan, needs, found, knit)
        if running is not None:
            return running
    return [*map(knit_need, found)]


def knitted(used_m: float) -> Figure:
    """Yarn that is knit in already, in m."""
    return Figure(used_m, "m", {KNITTED: used_m * USED_SHARE} if used_m else {})


def _beyond(plan: Plan, other: GroupTally, taken: float) -> Figure:
    """What the plan before may take of this skein beyond its share of it, in m."""
    mean, deviation = spill_over(other.margin)
    share = taken / other.supply.value if other.supply.value > 0 else 0.0
    cause = f"what {plan.name} may take beyond its share"
    return Figure(mean * share, "m", {cause: deviation * share})


def total_need(tally: PlanTally) -> Figure:
    """The whole need of a plan in m: its parts and its allowances."""
    return total((one.need for one in tally.groups), "m")
