"""The shortfall a way out is looked for in: the book, its reckoning and the plan."""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from typing import TypeVar

from app.book.book import Book
from app.book.plan import Part, Plan, Promise
from app.planning.answers import GroupAnswer, PartAnswer, PlanAnswer, Reckoning
from app.planning.knitting.done import Done, rows_done
from app.planning.needs import PartNeed, needs_of
from app.planning.proposal import propose
from app.planning.reckoning import reckon
from app.planning.what_if import WhatIf, between
from app.planning.yarns import Lots

Step = TypeVar("Step")

BARELY = 0.02
"""A share of a part below which it counts as not begun."""


@dataclass(frozen=True)
class Situation:
    """A plan that is short in a book that has been reckoned."""

    book: Book
    reckoning: Reckoning
    plan_id: str

    @cached_property
    def plan(self) -> Plan:
        return self.book.plan[self.plan_id]

    @cached_property
    def answer(self) -> PlanAnswer:
        return self.reckoning.plan(self.plan_id)

    @cached_property
    def lots(self) -> Lots:
        return Lots(self.book)

    @cached_property
    def parts(self) -> tuple[Part, ...]:
        return tuple(self.book.parts_of.get(self.plan_id, ()))

    @cached_property
    def needs(self) -> dict[str, PartNeed]:
        """The need of each part, by its id."""
        found = needs_of(self.plan, list(self.parts), self.lots)
        return {one.part.id: one for one in found}

    @cached_property
    def answers(self) -> dict[str, PartAnswer]:
        """The answer of each part, by its id."""
        return {one.part_id: one for one in self.answer.parts}

    @cached_property
    def short_groups(self) -> tuple[GroupAnswer, ...]:
        """Yarns that are short, the one that lacks most first."""
        short = [one for one in self.answer.groups if one.short_m > 0]
        return tuple(sorted(short, key=lambda one: -one.short_m))

    @cached_property
    def done(self) -> Done:
        """Rows done of each piece, where the garment is on the needles and they were noted."""
        return rows_done(self.book, self.plan_id) if self.plan.state == "being knit" else {}

    def rows_done(self, part: Part) -> int:
        """Rows done of the piece of a part that is furthest."""
        return max((rows for (name, _), rows in self.done.items() if name == part.id), default=0)

    def begun(self, part: Part) -> bool:
        """True for a part of which some is knit: by its rows, where any were noted."""
        if any(self.done.values()):
            return self.rows_done(part) > 0
        one = self.answers[part.id]
        return one.used_m > BARELY * one.need.value

    def short_of(self, part: Part) -> bool:
        """True for a part knit from a yarn that is short."""
        return any(part.id in one.part_ids for one in self.short_groups)

    def changed(
        self, put: Iterable[Plan | Part] = (), gone: Iterable[Part | Promise] = ()
    ) -> WhatIf:
        """The change with what is free promised to what then lacks yarn."""
        return self.also(WhatIf(tuple(put), tuple(gone)))

    def also(self, change: WhatIf) -> WhatIf:
        """A change, and what is free promised to what lacks yarn after it."""
        return between(self.book, filled(change.in_book(self.book), self.plan_id))

    def after(self, change: WhatIf, plan_id: str = "") -> PlanAnswer:
        """The answer once it is so."""
        return reckon(change.in_book(self.book)).plan(plan_id or self.plan_id)


def filled(book: Book, plan_id: str) -> Book:
    """The book with free skeins promised, and kept, to what a plan lacks."""
    being_knit = book.plan[plan_id].state == "being knit"
    known = {_where(one): one for one in book.promises_of.get(plan_id, [])}
    for one in propose(book, reckon(book), plan_id):
        old = known.get(_where(one))
        more = replace(old, mm=old.mm + one.mm) if old else one
        known[_where(one)] = replace(more, state="settled" if being_knit else "kept")
    others = (one for one in book.promises if one.plan_id != plan_id)
    return replace(book, promises=(*others, *known.values()))


def _where(promise: Promise) -> tuple[str, str, str]:
    """A skein lies with a part once: what is added to it is no second promise."""
    return promise.part_id, promise.holding_id, promise.role


def least(
    situation: Situation, steps: Sequence[Step], change: Callable[[Step], WhatIf]
) -> tuple[Step, WhatIf, PlanAnswer]:
    """The first of one or more steps, each going further than the one before, that makes the plan
    as sure as was asked, else the last; with its change and the answer."""
    found = _tried(situation, steps[-1], change)
    if not found[2].enough:
        return found
    low, high = 0, len(steps) - 1
    while low < high:
        middle = (low + high) // 2
        tried = _tried(situation, steps[middle], change)
        if tried[2].enough:
            found, high = tried, middle
        else:
            low = middle + 1
    return found


def _tried(
    situation: Situation, step: Step, change: Callable[[Step], WhatIf]
) -> tuple[Step, WhatIf, PlanAnswer]:
    made = change(step)
    return step, made, situation.after(made)
