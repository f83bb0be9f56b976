"""Which skein knits which row: what was knitted in first, then what is promised, skein by skein."""

from dataclasses import replace

from app.book.book import Book
from app.book.plan import Plan
from app.planning.answers import PlanAnswer, Taken
from app.planning.colours_along import colour_at
from app.planning.cover import promises_to
from app.planning.groups import Group, groups
from app.planning.needs import PartNeed, RoleNeed
from app.planning.picture_lengths import Ends, Length, Working, Yarn
from app.planning.picture_rows import Knit, Thread
from app.planning.rows import metres_per_row, of_role
from app.planning.schedule import AnyRun, schedule
from app.planning.sequence_rows import in_turns
from app.planning.turn import draws
from app.planning.used import knitted_in


class Pegging:
    """The skeins of one plan, handed to its parts in their order."""

    def __init__(self, book: Book, plan: Plan, needs: tuple[PartNeed, ...], told: PlanAnswer):
        self._told = {one.part_id: one for one in told.parts}
        promises = promises_to(book, plan)
        yarn_of = {one.holding_id: book.holding[one.holding_id].yarn_id for one in promises}
        self._groups = groups(needs, promises, yarn_of)
        self._book, self._promise = book, {one.id: one for one in promises}
        inside = {one.holding_id for one in promises if one.from_inside}
        used = list(knitted_in(book))
        self._ends = Ends(book, used)
        self._used = [Yarn() for _ in self._groups]
        for plan_id, holding_id, metres in used:
            length = self._ends.next(holding_id, metres, True, holding_id in inside)
            if plan_id == plan.id and self._groups:
                at = self._group_of(book.holding[holding_id].yarn_id or holding_id)
                self._used[at].lengths.append(length)
        self._stretch = [1.0 if draws(plan) else _took(*one) for one in self._pairs()]

    def knit(self, need: PartNeed) -> list[list[Knit]]:
        """Copy by copy, what each row of a part is knit with; parts are asked in their order."""
        if need.gauge is None or need.loop is None:
            return []
        runs = schedule(need.part.shape, need.gauge, need.part.worked)
        knit_in = in_turns(runs, need.part.sequence)
        rows = [run for run in knit_in for _ in range(run.rows)] * need.part.copies
        metres = metres_per_row(need.part, need.gauge, need.loop, need.held) * need.part.copies
        found = {
            role.role: self._yarn_for(need, role).along(of_role(role, metres, rows))
            for role in need.roles
        }
        meant = {role.role: role.yarn_id for role in need.roles}
        knit = [
            self._knit(run, [found[one.role][at] for one in run.strands], meant)
            for at, run in enumerate(rows)
        ]
        count = len(rows) // need.part.copies
        return [knit[start : start + count] for start in range(0, len(rows), max(1, count))]

    def _yarn_for(self, need: PartNeed, role: RoleNeed) -> Yarn:
        at = next(i for i, one in enumerate(self._groups) if (need.part.id, role) in one.roles)
        metres = role.need.value * self._stretch[at]
        used = self._used[at].part_off(metres)
        done = [replace(one, m=one.m / self._stretch[at]) for one in used]
        skeins = [one for one in self._told[need.part.id].skeins if one.role == role.role]
        in_order = sorted(skeins, key=lambda one: self._promise[one.promise_id].position)
        return Yarn(done + [self._promised(one) for one in in_order])

    def _promised(self, taken: Taken) -> Length:
        inside = self._promise[taken.promise_id].from_inside
        return self._ends.next(taken.holding_id, taken.m, False, inside)

    def _pairs(self) -> list[tuple[Group, Yarn]]:
        return list(zip(self._groups, self._used, strict=True))

    def _group_of(self, yarn_id: str) -> int:
        at = (i for i, group in enumerate(self._groups) if yarn_id in group.yarn_ids)
        return next(at, 0)

    def _knit(self, run: AnyRun, yarns: list[Working], meant: dict[str, str | None]) -> Knit:
        whole = sum(one.share * one.ends for one in run.strands) or 1.0
        shares: dict[tuple[str, str | None, str], float] = {}
        for strand, working in zip(run.strands, yarns, strict=True):
            key = strand.role, working.holding_id, self._colour(working)
            shares[key] = shares.get(key, 0.0) + strand.share * strand.ends / whole
        threads = tuple(
            Thread(role, share, holding, None if holding else meant[role], colour)
            for (role, holding, colour), share in shares.items()
        )
        return Knit(threads, all(one.done for one in yarns))

    def _colour(self, working: Working) -> str:
        """Of a skein whose colour runs, that of the row; else empty."""
        if working.holding_id is None:
            return ""
        return colour_at(self._book.holding[working.holding_id], working.at)


def _took(group: Group, used: Yarn) -> float:
    """What a finished garment took, as a share of what it was to take; 1 where that is unknown."""
    need = sum(role.need.value for _, role in group.roles)
    took = sum(one.m for one in used.lengths)
    return took / need if need > 0 and took > 0 else 1.0
