"""Each part of a plan: its need, what it has and from which skeins."""

from dataclasses import replace

from app.book.code_order import in_order
from app.craft.figure import total
from app.planning.answers import PartAnswer, Taken
from app.planning.cover import promises_to
from app.planning.needs import PartNeed
from app.planning.netting import GroupTally, PlanTally
from app.planning.remarks import remarks
from app.planning.yarns import Lots

SHORT_BELOW_M = 0.5
"""Less than this is not worth another join, and a part is not called short of it."""


DUST = 1e-9


def part_answers(tally: PlanTally, lots: Lots, covered: dict[str, float]) -> tuple[PartAnswer, ...]:
    """The answer of each part, in order; `covered` are the metres each promise really has."""
    left = {id(one): one.used_m for one in tally.groups}
    running = [_as_it_runs(need, tally) for need in tally.needs]
    return tuple(_part(need, tally, lots, covered, left) for need in running)


def _as_it_runs(need: PartNeed, tally: PlanTally) -> PartNeed:
    """The need of a part with the yarn its garment really takes, where it is on the needles: so
    the parts add up to what the rows of the garment need."""
    times = {
        role.role: _times(group)
        for group in tally.groups
        for part_id, role in group.group.roles
        if part_id == need.part.id
    }
    if all(abs(one - 1) < DUST for one in times.values()):
        return need
    roles = (replace(one, need=one.need.scaled(times[one.role])) for one in need.roles)
    return replace(need, roles=tuple(roles))


def _times(group: GroupTally) -> float:
    planned = sum(role.need.value for _, role in group.group.roles)
    return group.knit.value / planned if planned > 0 else 1.0


def _part(
    need: PartNeed, tally: PlanTally, lots: Lots, covered: dict[str, float], left: dict[int, float]
) -> PartAnswer:
    wanted = total((role.need for role in need.roles), "m")
    used = _used_for(need, tally, left)
    taken = _taken(need, tally, lots, covered)
    promised = sum(one.m for one in taken)
    chief = need.roles[0].yarn_id if need.roles else None
    return PartAnswer(
        part_id=need.part.id,
        name=need.part.name,
        copies=need.part.copies,
        stitches=need.stitches,
        rows=need.rows,
        need=wanted,
        yarn_id=chief,
        used_m=used,
        promised_m=promised,
        short_m=_short(wanted.value - used - promised),
        skeins=taken,
        remarks=remarks(tally.plan, need, taken, lots),
        working=need.working,
    )


def _short(missing: float) -> float:
    return missing if missing >= SHORT_BELOW_M else 0.0


def _used_for(need: PartNeed, tally: PlanTally, left: dict[int, float]) -> float:
    """Yarn knitted in is counted for the parts in their order: the book knows only the garment."""
    used = 0.0
    for group in tally.groups:
        for part_id, role in group.group.roles:
            if part_id == need.part.id:
                metres = min(role.need.value * _times(group), left[id(group)])
                left[id(group)] -= metres
                used += metres
    return used


def _taken(
    need: PartNeed, tally: PlanTally, lots: Lots, covered: dict[str, float]
) -> tuple[Taken, ...]:
    book = lots.book
    found = []
    for promise in promises_to(book, tally.plan):
        if promise.part_id != need.part.id:
            continue
        holding, balance = book.holding[promise.holding_id], book.balances.get(promise.holding_id)
        metres = covered[promise.id]
        per_metre = balance.mg / balance.mm if balance and balance.mm > 0 else 0.0
        found.append(
            Taken(
                promise_id=promise.id,
                holding_id=holding.id,
                code=holding.code,
                yarn_id=holding.yarn_id,
                role=promise.role,
                m=metres,
                g=metres * per_metre,
                state=promise.state,
                why=promise.why,
            )
        )
    return tuple(sorted(found, key=lambda one: in_order(one.code)))
