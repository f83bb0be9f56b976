"""What a change does to a plan: the same reckoning before and after, and what lies between."""

from collections.abc import Iterator
from dataclasses import dataclass

from app.book.book import Book
from app.planning.answers import PlanAnswer, Reckoning
from app.planning.needs import needs_of
from app.planning.reckoning import reckon
from app.planning.yarns import Lots


@dataclass(frozen=True, slots=True)
class PartChange:
    """How much more one part takes, in m; below zero where it takes less."""

    part_id: str
    name: str
    m: float


@dataclass(frozen=True, slots=True)
class YarnChange:
    """How much more the parts take of one yarn, in m, and in g (None where its grist is not known);
    below zero where less."""

    yarn_id: str
    name: str
    m: float
    g: float | None


@dataclass(frozen=True, slots=True)
class Effect:
    """What a change does: the plan before and after, the parts that take more or less, the yarns of
    which more or less is taken, what the whole takes more in m, and in g (None where the grist of
    a yarn is not known)."""

    before: PlanAnswer
    after: PlanAnswer
    parts: tuple[PartChange, ...]
    yarns: tuple[YarnChange, ...]
    m: float
    g: float | None


def change_effects(book: Book, changed: Book, plan_id: str) -> Effect:
    """What becomes of a plan if `book` becomes `changed`; both are reckoned. KeyError for a plan
    that is not in both."""
    return effect(book, reckon(book), changed, reckon(changed), plan_id)


def effect(book: Book, before: Reckoning, changed: Book, after: Reckoning, plan_id: str) -> Effect:
    """The same from two books that are reckoned already."""
    was, now = before.plan(plan_id), after.plan(plan_id)
    old_g, new_g = need_g(was, Lots(book)), need_g(now, Lots(changed))
    return Effect(
        before=was,
        after=now,
        parts=_parts(was, now),
        yarns=_yarns(book, changed, plan_id),
        m=now.need.value - was.need.value,
        g=None if old_g is None or new_g is None else new_g - old_g,
    )


def _parts(was: PlanAnswer, now: PlanAnswer) -> tuple[PartChange, ...]:
    metres = {one.part_id: -one.need.value for one in was.parts}
    for one in now.parts:
        metres[one.part_id] = metres.get(one.part_id, 0.0) + one.need.value
    names = {one.part_id: one.name for one in (*was.parts, *now.parts)}
    return tuple(PartChange(key, names[key], m) for key, m in metres.items() if m)


def _yarns(book: Book, changed: Book, plan_id: str) -> tuple[YarnChange, ...]:
    """By the yarn that is meant for each role of each part."""
    metres: dict[str, float] = {}
    for one, way in ((book, -1), (changed, 1)):
        for yarn_id, m in _by_yarn(one, plan_id):
            metres[yarn_id] = metres.get(yarn_id, 0.0) + way * m
    lots = Lots(changed)
    return tuple(_of_yarn(yarn_id, m, lots) for yarn_id, m in metres.items() if m)


def _by_yarn(book: Book, plan_id: str) -> Iterator[tuple[str, float]]:
    for need in needs_of(book.plan[plan_id], book.parts_of.get(plan_id, []), Lots(book)):
        for role in need.roles:
            if role.yarn_id:
                yield role.yarn_id, role.need.value


def _of_yarn(yarn_id: str, m: float, lots: Lots) -> YarnChange:
    tex = lots.tex(yarn_id)
    return YarnChange(
        yarn_id, lots.book.yarn[yarn_id].name, m, m * tex.value / 1000 if tex else None
    )


def need_g(plan: PlanAnswer, lots: Lots) -> float | None:
    """Grams of yarn a plan needs; None where the grist of one of its yarns is not known."""
    grams = 0.0
    for group in plan.groups:
        tex = lots.tex(group.yarn_id) if group.yarn_id else None
        if tex is None:
            return None
        grams += group.need.value * tex.value / 1000
    return grams
