"""The question before a part is taken out of a garment."""

from dataclasses import dataclass

from app.book.book import Book
from app.book.plan import Part, Plan
from app.book.stamp import stamp


@dataclass(frozen=True, slots=True)
class PartRemovePage:
    """`codes` are the skeins promised to the part, which become free."""

    plan: Plan
    part: Part
    stamp: str
    codes: tuple[str, ...]


def part_remove_page(book: Book, plan: Plan, part: Part) -> PartRemovePage:
    promises = book.promises_of.get(plan.id, [])
    codes = [book.holding[one.holding_id].code for one in promises if one.part_id == part.id]
    return PartRemovePage(plan, part, stamp(part), tuple(codes))
