"""What the shelf and the fleeces cover: every plan alone, and all of them in an order."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from typing import Literal

from app.book.book import Book
from app.book.plan import Plan
from app.planning.answers import PlanAnswer, Reckoning
from app.planning.changes import need_g
from app.planning.reckoning import reckon
from app.planning.turn import in_turn
from app.planning.ways_out.situation import filled
from app.planning.yarns import Lots

Standing = Literal["fits", "fits after spinning", "short", "wasteful", "not known"]
STANDINGS: tuple[Standing, ...] = ("fits", "fits after spinning", "short", "wasteful", "not known")

WASTED = 1.0
"""More than so many times of what it takes left over is called wasteful (assumed)."""


@dataclass(frozen=True, slots=True)
class Covered:
    """How a plan stands: `spin_m` and `buy_m` are what is still to be made, by fleeces there are
    and beyond them; `used_g` is the wool it takes, None where a grist is not known."""

    plan_id: str
    name: str
    standing: Standing
    odds: float
    need_m: float
    short_m: float
    spin_m: float
    buy_m: float
    left_m: float
    used_g: float | None


def intended(book: Book) -> list[Plan]:
    """The plans that can still be put in any order, in the order they have."""
    return [one for one in in_turn(book.plans) if one.state == "intended"]


def alone(book: Book, plan_id: str) -> Covered:
    """A plan as if no other were intended: it may have all that is not being knit."""
    only = filled(only_plans(book, (plan_id,)), plan_id)
    return covered(only, reckon(only), plan_id)


def in_order(book: Book, order: Sequence[str], anew: bool = False) -> Book:
    """The book with its intended plans served in an order, and what is free promised to each in
    its turn. What was kept stays; `anew` takes that apart as well. Plans that are not named come
    after, as they are."""
    ids = [*order, *(one.id for one in intended(book) if one.id not in order)]
    changed = replace(
        book,
        plans=tuple(_placed(one, ids) for one in book.plans),
        promises=tuple(
            one
            for one in book.promises
            if one.plan_id not in ids or not (anew or one.state == "proposed")
        ),
    )
    for plan_id in ids:
        changed = filled(changed, plan_id)
    return changed


def all_covered(book: Book, ids: Iterable[str]) -> tuple[Covered, ...]:
    """How plans stand in a book as it is."""
    reckoning = reckon(book)
    return tuple(covered(book, reckoning, one) for one in ids)


def only_plans(book: Book, ids: Sequence[str]) -> Book:
    """The book without the intended plans that are not named; what they were promised is free."""
    gone = {one.id for one in intended(book)} - set(ids)
    return replace(
        book,
        plans=tuple(one for one in book.plans if one.id not in gone),
        parts=tuple(one for one in book.parts if one.plan_id not in gone),
        promises=tuple(one for one in book.promises if one.plan_id not in gone),
        errands=tuple(one for one in book.errands if one.plan_id not in gone),
    )


def covered(book: Book, reckoning: Reckoning, plan_id: str) -> Covered:
    """How a plan stands in a book that has been reckoned. KeyError for one that is not in it."""
    answer = reckoning.plan(plan_id)
    mine = [one for one in reckoning.work if one.plan_id == plan_id and one.errand_id is None]
    buy = sum(one.m or 0 for one in mine if one.kind == "buy")
    spin = sum(one.m or 0 for one in mine if one.kind == "spin")
    return Covered(
        plan_id=plan_id,
        name=answer.name,
        standing=_standing(answer, bool(buy)),
        odds=answer.odds,
        need_m=answer.need.value,
        short_m=answer.short_m,
        spin_m=spin,
        buy_m=buy,
        left_m=answer.left_m,
        used_g=need_g(answer, Lots(book)) if answer.begun else None,
    )


def _standing(answer: PlanAnswer, buys: bool) -> Standing:
    if not answer.begun:
        return "not known"
    if answer.enough and answer.left_m > WASTED * answer.need.value:
        return "wasteful"
    if answer.enough or answer.waiting:
        return "fits"
    return "short" if buys else "fits after spinning"


def _placed(plan: Plan, ids: Sequence[str]) -> Plan:
    return replace(plan, priority=ids.index(plan.id) + 1) if plan.id in ids else plan
