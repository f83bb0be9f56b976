"""What finished garments change in the plans that are not begun."""

from collections.abc import Iterator
from dataclasses import dataclass

from app.book.book import Book
from app.craft.figure import Figure, total
from app.planning.needs import PartNeed, learns_of, needs_of
from app.planning.needs_planned import planned_needs
from app.planning.yarns import Lots


@dataclass(frozen=True, slots=True)
class Learned:
    """The metres of a plan's parts without what was learned, and with it."""

    plan_id: str
    name: str
    without: Figure
    with_it: Figure


def learned_effect(book: Book) -> tuple[Learned, ...]:
    """Every open plan that what was learned bears on."""
    return tuple(_of_plans(book, Lots(book)))


def _of_plans(book: Book, lots: Lots) -> Iterator[Learned]:
    for plan in book.plans:
        parts = book.parts_of.get(plan.id, [])
        if learns_of(plan, book) and parts:
            without = _metres(planned_needs(plan, parts, lots))
            with_it = _metres(needs_of(plan, parts, lots))
            if without != with_it:
                yield Learned(plan.id, plan.name, without, with_it)


def _metres(needs: tuple[PartNeed, ...]) -> Figure:
    return total((role.need for one in needs for role in one.roles), "m")
