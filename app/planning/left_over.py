"""What else the left-over of a garment would make, as surely as the maker wants it."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import floor

from app.book.book import Book
from app.book.plan import Plan
from app.craft.garments import KINDS
from app.planning.answers import GroupAnswer, Reckoning
from app.planning.quick import Question, quick
from app.planning.yarns import Lots

LEAST_M = 20.0
"""Less is kept for mending."""


@dataclass(frozen=True, slots=True)
class Fits:
    """Something that the left-over reaches for: a plan there is (`plan_id`), or a garment of a
    `kind` for the same wearer; `odds` that it reaches from `m` metres of the yarn."""

    words: str
    yarn_id: str
    m: int
    odds: float
    kind: str = ""
    plan_id: str | None = None


def fits_left_over(book: Book, reckoning: Reckoning, plan_id: str) -> tuple[Fits, ...]:
    """Plans that lack no more than what is at least left of their yarn, then garments that can be
    made of it; none for a plan that is short."""
    answer, plan, lots = reckoning.plan(plan_id), book.plan[plan_id], Lots(book)
    if not answer.enough:
        return ()
    groups = [one for one in answer.groups if one.yarn_id and one.left_at_least_m >= LEAST_M]
    found = [fit for group in groups for fit in _plans(reckoning, plan_id, group)]
    found += [fit for group in groups for fit in _garments(book, plan, lots, group)]
    return tuple(found)


def _plans(reckoning: Reckoning, plan_id: str, group: GroupAnswer) -> Iterator[Fits]:
    for other in reckoning.plans:
        short = sum(one.short_m for one in other.groups if one.yarn_id == group.yarn_id)
        mine = other.plan_id != plan_id and other.begun
        if mine and 0 < short <= group.left_at_least_m and short == other.short_m:
            metres = floor(group.left_at_least_m)
            yarn_id = group.yarn_id or ""
            yield Fits(other.name, yarn_id, metres, other.sureness, plan_id=other.plan_id)


def _garments(book: Book, plan: Plan, lots: Lots, group: GroupAnswer) -> Iterator[Fits]:
    yarn_id = group.yarn_id or ""
    person = book.person.get(plan.person_id or "")
    measures = {one.name: one.mm / 10 for one in person.measures} if person else {}
    metres = floor(group.left_at_least_m)
    sureness = plan.sureness_pct or book.settings.sureness_pct
    for kind in KINDS:
        question = Question(kind, metres, None, lots.tex(yarn_id), plan.gauge, measures, sureness)
        try:
            found = quick(question, book.settings)
        except ValueError:
            continue
        if found.enough:
            words = kind if kind in ("mittens", "socks") else f"a {kind}"
            yield Fits(words, yarn_id, metres, found.odds, kind)
