"""Let a garment take the numbers its swatch has now, in the place of those it took earlier."""

from dataclasses import dataclass, replace

from sqlmodel import Session

from app.book.book import Book
from app.book.gauge import Gauge
from app.book.plan import Part, Plan
from app.book.swatch import Swatch, gauge_of
from app.planning.turn import in_turn
from app.store.records import load_book, put


@dataclass(frozen=True, slots=True)
class KnitTo:
    """A garment whose gauge, or a part's, was taken from a swatch: the `records` that took it, the
    gauges they took, and whether the swatch says something else by now."""

    plan: Plan
    records: tuple[Plan | Part, ...]
    taken: tuple[Gauge, ...]
    moved_on: bool

    @property
    def may_take(self) -> bool:
        """True where new numbers are to be had; what is cast on keeps those it was cast on with."""
        return self.moved_on and self.plan.state == "intended"


def knit_to(book: Book, swatch: Swatch) -> tuple[KnitTo, ...]:
    """The garments that took their gauge from a swatch, in the order of the garments."""
    return tuple(one for plan in in_turn(book.plans) if (one := _knit_to(book, plan, swatch)))


def take_gauge(session: Session, swatch: Swatch, plan_id: str) -> bool:
    """Give a garment the swatch's present numbers; False where there is nothing to take."""
    now = gauge_of(swatch)
    found = [one for one in knit_to(load_book(session), swatch) if one.plan.id == plan_id]
    if now is None or not found or not found[0].may_take:
        return False
    for record in found[0].records:
        put(session, replace(record, gauge=now))
    return True


def _knit_to(book: Book, plan: Plan, swatch: Swatch) -> KnitTo | None:
    both: tuple[Plan | Part, ...] = (plan, *book.parts_of.get(plan.id, ()))
    records = tuple(one for one in both if one.gauge and one.gauge.swatch_id == swatch.id)
    taken = tuple(one.gauge for one in records if one.gauge)
    now = gauge_of(swatch)
    moved_on = now is not None and any(one != now for one in taken)
    return KnitTo(plan, records, taken, moved_on) if records else None
