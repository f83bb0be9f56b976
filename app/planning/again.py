"""A garment made again: a new plan like one that is finished, from the same yarn or another."""

from dataclasses import replace

from app.book.book import Book
from app.book.gauge import Gauge
from app.book.plan import Part, Plan, RoleYarn
from app.planning.design import part_id

MAIN = "main"

UNTRIED_PCT = 5.0
"""How unsure the yarn in a stitch is of a gauge that was counted in another yarn (practice)."""


def again(book: Book, plan: Plan, new_id: str, yarn_id: str | None) -> tuple[Plan, list[Part]]:
    """The new plan and its parts; `yarn_id` takes the place of the main yarn, None keeps it. What
    belongs to the old garment alone, its numbers, its days and its notes, stays with it."""
    yarns = _with_yarn(plan.yarns, yarn_id)
    made = Plan(
        id=new_id,
        name=_free_name(book, plan.name),
        person_id=plan.person_id,
        gauge=_tried(book, plan.gauge, yarns),
        yarns=yarns,
        sureness_pct=plan.sureness_pct,
        losses=plan.losses,
        design=plan.design,
        pattern_id=plan.pattern_id,
        size=plan.size,
        follows=plan.follows,
    )
    parts: dict[str, Part] = {}
    for one in book.parts_of.get(plan.id, []):
        id = part_id(made.id, one.name)
        id = id if id not in parts else f"{id}-{one.position}"
        parts[id] = replace(_part(book, one, made, yarn_id), id=id)
    return made, list(parts.values())


def _part(book: Book, part: Part, plan: Plan, yarn_id: str | None) -> Part:
    own = _with_yarn(part.yarns, yarn_id) if any(one.role == MAIN for one in part.yarns) else ()
    yarns = own or part.yarns
    return replace(
        part,
        plan_id=plan.id,
        yarns=yarns,
        gauge=_tried(book, part.gauge, (*yarns, *plan.yarns)),
    )


def _with_yarn(yarns: tuple[RoleYarn, ...], yarn_id: str | None) -> tuple[RoleYarn, ...]:
    if yarn_id is None:
        return yarns
    others = tuple(one for one in yarns if one.role != MAIN)
    return (RoleYarn(MAIN, yarn_id), *others)


def _tried(book: Book, gauge: Gauge | None, yarns: tuple[RoleYarn, ...]) -> Gauge | None:
    """The gauge, less sure where its swatch was knit in another yarn."""
    swatch = book.swatch.get(gauge.swatch_id or "") if gauge else None
    main = next((one.yarn_id for one in yarns if one.role == MAIN), None)
    if gauge is None or swatch is None or swatch.yarn_id == main:
        return gauge
    return replace(gauge, swatch_id=None, assumed_pct=max(gauge.assumed_pct, UNTRIED_PCT))


def _free_name(book: Book, name: str) -> str:
    taken, base = {one.name for one in book.plans}, f"{name} again"
    numbers = (base if n == 1 else f"{base}, {n}" for n in range(1, len(taken) + 2))
    return next(one for one in numbers if one not in taken)
