"""The course of a garment: its rows in the order in which they are knit, and the yarn each takes as
planned. A place in it is told in planned metres of one group of yarns."""

from bisect import bisect_right
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import accumulate

from app.book.plan import Plan
from app.planning.groups import Group
from app.planning.needs import PartNeed
from app.planning.rows import role_rows

DUST = 1e-9


@dataclass(frozen=True, slots=True)
class Place:
    """So many `rows` of a piece of a part are done, of `of`."""

    part_id: str
    part: str
    piece: int
    pieces: int
    rows: int
    of: int

    @property
    def whole(self) -> bool:
        """True where the piece is done."""
        return self.rows >= self.of

    def on(self, rows: int) -> "Place":
        """The place so many rows further on."""
        return replace(self, rows=self.rows + rows)

    @property
    def at_end(self) -> "Place":
        """The end of the piece."""
        return replace(self, rows=self.of)


@dataclass(frozen=True)
class Leg:
    """One piece of a part in a course: the metres of the group's yarn in each of its rows."""

    part_id: str
    part: str
    piece: int
    pieces: int
    rows: tuple[float, ...]

    @cached_property
    def after(self) -> tuple[float, ...]:
        """Metres after 0, 1, 2 … rows."""
        return tuple(accumulate(self.rows, initial=0.0))

    @property
    def metres(self) -> float:
        """Metres in all of it."""
        return self.after[-1]

    def place(self, metres: float) -> Place:
        """The place that so many metres of the piece reach: its last whole row."""
        rows = bisect_right(self.after, metres + DUST) - 1
        return Place(self.part_id, self.part, self.piece, self.pieces, rows, len(self.rows))


@dataclass(frozen=True)
class Course:
    """What a group of yarns knits, piece after piece."""

    group: Group
    legs: tuple[Leg, ...]

    @cached_property
    def starts(self) -> tuple[float, ...]:
        """Planned metres before each leg, and at the end."""
        return tuple(accumulate((one.metres for one in self.legs), initial=0.0))

    @property
    def metres(self) -> float:
        """Planned metres in all."""
        return self.starts[-1]

    def leg(self, part_id: str, piece: int) -> Leg | None:
        """A piece of a part, None where this yarn does not knit it."""
        found = (one for one in self.legs if (one.part_id, one.piece) == (part_id, piece))
        return next(found, None)

    def at(self, part_id: str, piece: int, rows: int) -> float | None:
        """Planned metres before the row after so many of a piece; None where this yarn does not
        knit it."""
        for leg, start in zip(self.legs, self.starts, strict=False):
            if (leg.part_id, leg.piece) == (part_id, piece):
                return start + leg.after[min(rows, len(leg.rows))]
        return None

    def end_of(self, part_id: str, piece: int) -> float:
        """Planned metres at the end of a piece; KeyError where this yarn does not knit it."""
        for leg, end in zip(self.legs, self.starts[1:], strict=True):
            if (leg.part_id, leg.piece) == (part_id, piece):
                return end
        raise KeyError(part_id)

    def place(self, metres: float) -> Place | None:
        """The place that so many planned metres reach; None beyond the end of the garment, and
        where no row is known."""
        if not self.legs or metres > self.metres + DUST:
            return None
        at = min(bisect_right(self.starts, metres) - 1, len(self.legs) - 1)
        return self.legs[max(0, at)].place(metres - self.starts[max(0, at)])


def courses(
    plan: Plan, needs: tuple[PartNeed, ...], groups: tuple[Group, ...]
) -> tuple[Course, ...]:
    """A course for each group of a plan's yarns, in the order of the groups."""
    assert all(one.part.plan_id == plan.id for one in needs)
    return tuple(Course(group, _legs(needs, group)) for group in groups)


def _legs(needs: tuple[PartNeed, ...], group: Group) -> tuple[Leg, ...]:
    found = []
    for need in needs:
        mine = [role for part_id, role in group.roles if part_id == need.part.id]
        by_role = [role_rows(need, role) for role in mine]
        rows = tuple(map(sum, zip(*by_role, strict=True))) if by_role else ()
        pieces = need.part.copies
        if sum(rows) > 0:
            name = need.part.name
            found += [Leg(need.part.id, name, piece + 1, pieces, rows) for piece in range(pieces)]
    return tuple(found)
