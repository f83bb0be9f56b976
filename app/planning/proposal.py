"""A sensible first proposal for a plan: which free skeins go into which parts, each with a reason.

What the solver's is compared with, and what is proposed where no solver can be loaded.

Greedy: the largest part first; of the yarn meant for it the one skein that covers what is missing
with the least left over, else the largest. The reserve needs no promise: the reckoning sets it
aside from the same yarn.
"""

from dataclasses import dataclass
from math import floor

from app.book.book import Book
from app.book.ids import new_id
from app.book.plan import Promise
from app.planning.answers import PartAnswer, Reckoning, ShelfLine
from app.planning.needs import PartNeed, RoleNeed, needs_of
from app.planning.remarks import firmness_remark
from app.planning.yarns import Lots

LEAST_M = 0.5
"""Less than this is not worth another join."""


@dataclass(slots=True)
class _Free:
    """What is left of the free skeins while the proposal is made, in m."""

    lots: Lots
    metres: dict[str, float]

    def of_yarn(self, yarn_id: str) -> dict[str, float]:
        skeins = self.lots.skeins.get(yarn_id, [])
        return {one.id: m for one in skeins if (m := self.metres.get(one.id, 0.0)) >= LEAST_M}


def propose(book: Book, reckoning: Reckoning, plan_id: str) -> tuple[Promise, ...]:
    """Promises for what the parts of a plan still miss, in state "proposed", with a reason each.

    What is promised already stays. Fewer metres than missing where the shelf has no more.
    """
    lots = Lots(book)
    plan, answer = book.plan[plan_id], reckoning.plan(plan_id)
    free = _Free(lots, {key: can_take_m(line, plan_id) for key, line in reckoning.shelf.items()})
    needs = {one.part.id: one for one in needs_of(plan, book.parts_of.get(plan_id, []), lots)}
    found: list[Promise] = []
    for part in sorted(answer.parts, key=lambda one: -one.need.value):
        for role in needs[part.part_id].roles:
            missing = missing_m(needs[part.part_id], role, part)
            yarn_id = role.yarn_id or _best_yarn(lots, missing, needs[part.part_id], free)
            if yarn_id and missing >= LEAST_M:
                found += _fill(plan_id, part, role.role, missing, yarn_id, free)
    return tuple(found)


def can_take_m(line: ShelfLine, plan_id: str) -> float:
    """Free metres, and what is in reserve for this plan itself."""
    own = sum(one.m for one in line.promised_to if one.part_id is None and one.plan_id == plan_id)
    return line.free_m + own


def missing_m(need: PartNeed, role: RoleNeed, part: PartAnswer) -> float:
    """Metres of a role neither promised nor knitted in. What is knitted in counts by share; so does
    what the part really takes, where it is on the needles."""
    whole = sum(one.need.value for one in need.roles)
    promised = sum(one.m for one in part.skeins if one.role == role.role)
    share = role.need.value / whole if whole > 0 else 0.0
    return share * (part.need.value - part.used_m) - promised


def _best_yarn(lots: Lots, missing: float, need: PartNeed, free: _Free) -> str | None:
    """A yarn for a part that has none: one that suits it, and covers it with the least left over;
    where none covers it, the one with the most."""
    offers = {one: sum(free.of_yarn(one).values()) for one in lots.skeins}
    suited = {one: metres for one, metres in offers.items() if suits(lots, one, need)}
    enough = {one: metres for one, metres in suited.items() if metres >= missing}
    if enough:
        return min(enough, key=lambda one: (enough[one], one))
    return max(suited, key=lambda one: (suited[one], one), default=None)


def suits(lots: Lots, yarn_id: str, need: PartNeed) -> bool:
    """Whether a yarn makes a fabric of ordinary firmness in a part."""
    remark = firmness_remark(lots.book.yarn[yarn_id], need, lots)
    return remark is not None and not remark.doubt


def _fill(
    plan_id: str, part: PartAnswer, role: str, missing: float, yarn_id: str, free: _Free
) -> list[Promise]:
    found: list[Promise] = []
    while missing >= LEAST_M and (skeins := free.of_yarn(yarn_id)):
        holding_id, why = _next_skein(skeins, missing, free.lots.book.yarn[yarn_id].name)
        mm = floor(1000 * min(missing, skeins[holding_id]))
        free.metres[holding_id] -= mm / 1000
        missing -= mm / 1000
        promise_id = new_id()
        found.append(
            Promise(promise_id, plan_id, part.part_id, holding_id, mm, role, "proposed", why)
        )
    return found


def _next_skein(skeins: dict[str, float], missing: float, yarn: str) -> tuple[str, str]:
    enough = {one: metres for one, metres in skeins.items() if metres >= missing}
    if enough:
        holding_id = min(enough, key=lambda one: (enough[one], one))
        return holding_id, f"covers what is missing with the least of {yarn} left over"
    holding_id = max(skeins, key=lambda one: (skeins[one], one))
    return holding_id, f"the most that is free in one skein of {yarn}"
