"""Which skein knits which row: what was knitted in first, then what is promised, skein by skein."""

from collections.abc import Iterable
from dataclasses import dataclass, field

from app.book.book import Book
from app.book.plan import Plan
from app.book.shape import Run
from app.planning.answers import PlanAnswer
from app.planning.cover import promises_to
from app.planning.groups import Group, groups
from app.planning.needs import PartNeed, RoleNeed
from app.planning.picture_rows import Knit, Thread
from app.planning.rows import metres_per_row
from app.planning.schedule import schedule
from app.planning.turn import draws
from app.planning.used import knitted_in


@dataclass(slots=True)
class Yarn:
    """Yarn in the order in which it is knit: (holding, metres, whether it is knitted in)."""

    lengths: list[tuple[str, float, bool]] = field(default_factory=list)

    def part_off(self, metres: float) -> list[tuple[str, float, bool]]:
        """Take so many metres, or all there is, from its beginning."""
        taken = []
        while self.lengths and metres > 0:
            holding_id, there, done = self.lengths.pop(0)
            now = min(there, metres)
            taken.append((holding_id, now, done))
            metres -= now
            if there > now:
                self.lengths.insert(0, (holding_id, there - now, done))
        return taken

    def along(self, rows: Iterable[float]) -> list[tuple[str | None, bool]]:
        """The holding that knits most of each row, given the metres of the rows, and whether it is
        done; None once the yarn has come to its end."""
        found: list[tuple[str | None, bool]] = []
        at, begun, end = 0, 0.0, self.lengths[0][1] if self.lengths else 0.0
        for metres in rows:
            while at < len(self.lengths) and end < begun + metres / 2:
                at += 1
                end += self.lengths[at][1] if at < len(self.lengths) else 0.0
            holding_id, _, done = self.lengths[at] if at < len(self.lengths) else (None, 0, False)
            found.append((holding_id, done))
            begun += metres
        return found


class Pegging:
    """The skeins of one plan, handed to its parts in their order."""

    def __init__(self, book: Book, plan: Plan, needs: tuple[PartNeed, ...], told: PlanAnswer):
        self._told = {one.part_id: one for one in told.parts}
        promises = promises_to(book, plan)
        yarn_of = {one.holding_id: book.holding[one.holding_id].yarn_id for one in promises}
        self._groups = groups(needs, promises, yarn_of)
        self._used = [Yarn() for _ in self._groups]
        for plan_id, holding_id, metres in knitted_in(book):
            if plan_id == plan.id and self._groups:
                at = self._group_of(book.holding[holding_id].yarn_id or holding_id)
                self._used[at].lengths.append((holding_id, metres, True))
        self._stretch = [1.0 if draws(plan) else _took(*one) for one in self._pairs()]

    def knit(self, need: PartNeed) -> list[list[Knit]]:
        """Copy by copy, what each row of a part is knit with; parts are asked in their order."""
        if need.gauge is None or need.loop is None:
            return []
        runs = schedule(need.part.shape, need.gauge, need.part.worked)
        rows = [run for run in runs for _ in range(run.rows)] * need.part.copies
        metres = metres_per_row(need.part, need.gauge, need.loop) * need.part.copies
        found = {
            role.role: self._yarn_for(need, role).along(_of_role(role, metres, rows))
            for role in need.roles
        }
        meant = {role.role: role.yarn_id for role in need.roles}
        knit = [
            _knit(run, [found[one.role][at] for one in run.strands], meant)
            for at, run in enumerate(rows)
        ]
        count = len(rows) // need.part.copies
        return [knit[start : start + count] for start in range(0, len(rows), max(1, count))]

    def _yarn_for(self, need: PartNeed, role: RoleNeed) -> Yarn:
        at = next(i for i, one in enumerate(self._groups) if (need.part.id, role) in one.roles)
        metres = role.need.value * self._stretch[at]
        used = [
            (one, m / self._stretch[at], done) for one, m, done in self._used[at].part_off(metres)
        ]
        skeins = self._told[need.part.id].skeins
        return Yarn(
            used + [(one.holding_id, one.m, False) for one in skeins if one.role == role.role]
        )

    def _pairs(self) -> list[tuple[Group, Yarn]]:
        return list(zip(self._groups, self._used, strict=True))

    def _group_of(self, yarn_id: str) -> int:
        at = (i for i, group in enumerate(self._groups) if yarn_id in group.yarn_ids)
        return next(at, 0)


def _took(group: Group, used: Yarn) -> float:
    """What a finished garment took, as a share of what it was to take; 1 where that is unknown."""
    need = sum(role.need.value for _, role in group.roles)
    took = sum(metres for _, metres, _ in used.lengths)
    return took / need if need > 0 and took > 0 else 1.0


def _of_role(role: RoleNeed, metres: list[float], rows: list[Run]) -> list[float]:
    """What a role takes in each row of all copies: its share of the row, and of what it needs in
    all. Seams are spread over the rows."""
    own = [m * _share(run, role.role) for m, run in zip(metres, rows, strict=True)]
    stretch = role.need.value / sum(own) if sum(own) else 0.0
    return [one * stretch for one in own]


def _share(run: Run, role: str) -> float:
    whole = sum(one.share * one.ends for one in run.strands)
    own = sum(one.share * one.ends for one in run.strands if one.role == role)
    return own / whole if whole else 0.0


def _knit(run: Run, yarns: list[tuple[str | None, bool]], meant: dict[str, str | None]) -> Knit:
    whole = sum(one.share * one.ends for one in run.strands) or 1.0
    shares: dict[tuple[str, str | None], float] = {}
    for strand, (holding_id, _) in zip(run.strands, yarns, strict=True):
        key = strand.role, holding_id
        shares[key] = shares.get(key, 0.0) + strand.share * strand.ends / whole
    threads = tuple(
        Thread(role, share, holding, None if holding else meant[role])
        for (role, holding), share in shares.items()
    )
    return Knit(threads, all(done for _, done in yarns))
