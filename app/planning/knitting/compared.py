"""A finished garment: what was planned, against what it took."""

from dataclasses import dataclass

from app.book.book import Book
from app.book.knitting import Took
from app.planning.hours import hours_for
from app.planning.needs import PartNeed, needs_of
from app.planning.yarns import Lots


@dataclass(frozen=True, slots=True)
class PartCompared:
    """A role of a part: metres planned and taken, grams taken, and minutes if they were noted."""

    part_id: str
    part: str
    role: str
    yarn_id: str | None
    planned_m: float
    took_m: float
    took_g: float
    minutes: int | None

    @property
    def times(self) -> float | None:
        """Taken as a multiple of planned; None where either is not known."""
        return self.took_m / self.planned_m if self.planned_m > 0 and self.took_m > 0 else None


@dataclass(frozen=True, slots=True)
class Compared:
    """All parts, in their order, and the hours: planned at the usual pace, and taken."""

    parts: tuple[PartCompared, ...]
    planned_h: float
    took_h: float | None

    @property
    def planned_m(self) -> float:
        return sum(one.planned_m for one in self.parts)

    @property
    def took_m(self) -> float:
        return sum(one.took_m for one in self.parts)

    @property
    def took_g(self) -> float:
        return sum(one.took_g for one in self.parts)


def compared(book: Book, plan_id: str) -> Compared | None:
    """The comparison; None for a garment of which nothing was kept."""
    plan = book.plan[plan_id]
    if plan.state != "finished" or not plan.took:
        return None
    needs = {one.part.id: one for one in needs_of(plan, book.parts_of.get(plan_id, []), Lots(book))}
    parts = tuple(_part(needs[one.part_id], one) for one in plan.took if one.part_id in needs)
    minutes = [one.minutes for one in plan.took if one.minutes is not None]
    stitches = sum((one.stitches or 0) * one.part.copies for one in needs.values())
    return Compared(parts, hours_for(stitches).value, sum(minutes) / 60 if minutes else None)


def _part(need: PartNeed, took: Took) -> PartCompared:
    role = next((one for one in need.roles if one.role == took.role), None)
    return PartCompared(
        part_id=need.part.id,
        part=need.part.name,
        role=took.role,
        yarn_id=role.yarn_id if role else None,
        planned_m=role.need.value if role else 0.0,
        took_m=(took.mm or 0) / 1000,
        took_g=(took.mg or 0) / 1000,
        minutes=took.minutes,
    )
