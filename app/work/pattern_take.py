"""Ask which size of a pattern a garment is to be knit in, and take one into its plan."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Literal

from sqlmodel import Session

from app.book.book import Book
from app.book.pattern import Pattern
from app.book.plan import Plan
from app.craft.pattern_gauge import Case
from app.craft.sizes import Ease
from app.planning.from_pattern import counted_parts, stated_parts
from app.planning.pattern_fit import around, ease_range, wearer
from app.planning.redraw import Redrawn, replaced
from app.planning.which_size import WhichSize, which_size
from app.store.records import load_book
from app.work.design_save import save_redrawn
from app.work.refusal import Refusal

By = Literal["counts", "stated"]
BY_WORDS: tuple[By, ...] = ("counts", "stated")
"""What the parts are made from: the stitches of a size, or the amount of yarn stated for it."""

BODY = "body"
"""The field of the measure a garment goes around."""


@dataclass(frozen=True, slots=True)
class SizeAsked:
    """What is asked of a pattern: what is kept of it, measures in cm by name, and the ease wanted,
    a chart's or one in cm."""

    pattern: Pattern
    case: Case
    measures: Mapping[str, float]
    ease: Ease | float


def ask_size(book: Book, plan: Plan, asked: SizeAsked) -> WhichSize:
    """Every size at the plan's gauge; Refusal beside the body where it is not known, or no body."""
    measure = around(asked.pattern)
    if measure not in asked.measures:
        raise Refusal(BODY, f"Say what the {measure} measures.")
    try:
        known = wearer(asked.measures)
    except ValueError as wrong:
        raise Refusal(BODY, f"{str(wrong)[:1].upper()}{str(wrong)[1:]}.") from None
    wanted = ease_range(measure, known, asked.ease)
    return which_size(book, plan, asked.pattern, asked.case, known, wanted)


def take_size(
    session: Session, plan: Plan, pattern: Pattern, size_name: str, case: Case, by: By
) -> Redrawn:
    """Make a size of a pattern the parts of a plan, by its counts or its stated amount.

    A part of the same name keeps what is promised to it; parts the size does not have go. Refusal
    beside `size` for a size that is gone or that does not say what is needed.
    """
    size = next((one for one in pattern.sizes if one.name == size_name), None)
    if size is None or plan.gauge is None:
        raise Refusal("size", "Choose one of the sizes.")
    taken = replace(plan, pattern_id=pattern.id, size=size.name, follows=case, design=None)
    make = counted_parts if by == "counts" else stated_parts
    parts = make(taken, pattern, size, plan.gauge, case)
    if not parts:
        missing = "stitches with rows or lengths" if by == "counts" else "an amount of yarn"
        raise Refusal("size", f"The pattern does not give {missing} for {size.name}.")
    done = replaced(load_book(session), taken, parts)
    save_redrawn(session, done)
    return done
