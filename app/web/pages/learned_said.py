"""What was learned from garments, in words: its effect on open plans, and how even a yarn is."""

from collections.abc import Iterator
from dataclasses import dataclass

from app.book.book import Book
from app.planning.knitting.drift import drifts_learned
from app.planning.learned_effect import learned_effect
from app.web.pages.answer import counted, yarn_name
from app.web.shown import Shown


@dataclass(frozen=True, slots=True)
class EffectRow:
    """A plan with the yarn it takes without what was learned, and with it."""

    name: str
    url: str
    without: str
    with_it: str


def effect_rows(book: Book, shown: Shown) -> Iterator[EffectRow]:
    """Every open plan that is reckoned otherwise than by common practice."""
    for one in learned_effect(book):
        yield EffectRow(
            one.name,
            f"/garments/{one.plan_id}",
            shown.length_range(one.without),
            shown.length_range(one.with_it),
        )


def drifts_said(book: Book, shown: Shown) -> Iterator[str]:
    """How far the grist of each yarn wanders, by the balls of it that were weighed."""
    for one in drifts_learned(book):
        balls = counted(one.balls, "ball")
        yield (
            f"{yarn_name(one.yarn_id, book)}: its grist wanders by about "
            f"{shown.percent(100 * one.cv, 1)} over {shown.length(one.k)}, by {balls} weighed "
            f"three times or more. Before: {shown.percent(100 * one.before_cv, 1)} over "
            f"{shown.length(one.before_k)}."
        )
