"""Parts of a drawn garment that no longer meet, in words."""

from dataclasses import dataclass

from app.book.book import Book
from app.book.plan import Part, Plan
from app.book.shape import Runs
from app.book.stamp import stamp
from app.planning.parted import Parted, parted
from app.web.shown import Shown


@dataclass(frozen=True, slots=True)
class PartedSaid:
    """What no longer meets; `match` says what the part would become, empty where it cannot be drawn
    by itself."""

    part_id: str
    stamp: str
    sentence: str
    match: str


def parted_said(found: tuple[Parted, ...], shown: Shown) -> tuple[PartedSaid, ...]:
    """Each once, with what would make it meet again."""
    return tuple(
        PartedSaid(one.part.id, stamp(one.part), parted_words(one), _match(one.matched, shown))
        for one in found
    )


def parted_words(one: Parted) -> str:
    """ "The front bands were drawn to meet the body, which has 20 rows more now."."""
    be = "were" if one.part.copies > 1 else "was"
    has = "have" if one.other.copies > 1 else "has"
    rows = f"{abs(one.rows)} row{'' if abs(one.rows) == 1 else 's'}"
    now = f"{has} {rows} {'more' if one.rows > 0 else 'fewer'} now" if one.rows else "changed since"
    return f"The {one.part.name} {be} drawn to meet the {one.other.name}, which {now}."


def no_longer_meet(plan: Plan, changed: Part, book: Book) -> str:
    """What a change of a part leaves behind, to be said when it is saved; empty for nothing."""
    found = parted(plan, book.parts_of.get(plan.id, []))
    return "".join(f" {parted_words(one)}" for one in found if one.other.id == changed.id)


def _match(part: Part | None, shown: Shown) -> str:
    if part is None or not isinstance(part.shape, Runs):
        return ""
    return f"Draw the {part.name} to match: {shown.number(part.shape.runs[0].stitches)} stitches"
