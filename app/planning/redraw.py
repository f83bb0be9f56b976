"""Draw a plan's parts anew from its design, and see what becomes of those it has."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Any

from app.book.book import Book
from app.book.plan import Part, Plan, Promise
from app.book.shape import Runs
from app.planning.design import part_id, parts_from
from app.planning.knit_with import knit_shape, told_by

SAID = ("gauge", "edges", "place", "in_round")
"""What a drawing gives a part beside its rows, and what the maker may have said otherwise."""


@dataclass(frozen=True, slots=True)
class Redrawn:
    """A plan drawn anew: its parts as they become, those that go, the promises that stay (each with
    the part it is now for), those that are freed, and the parts whose rows the maker had changed,
    which are drawn over."""

    plan: Plan
    parts: tuple[Part, ...]
    gone: tuple[Part, ...]
    kept: tuple[Promise, ...]
    freed: tuple[Promise, ...]
    remade: tuple[Part, ...] = ()

    def in_book(self, book: Book) -> Book:
        """The book as it would be."""
        mine = self.plan.id
        return replace(
            book,
            plans=(*(one for one in book.plans if one.id != mine), self.plan),
            parts=(*(one for one in book.parts if one.plan_id != mine), *self.parts),
            promises=(*(one for one in book.promises if one.plan_id != mine), *self.kept),
        )


def redraw(book: Book, plan: Plan) -> Redrawn:
    """The parts of a plan with a design and a gauge, as `replaced`. ValueError, in words, for a
    garment that cannot be."""
    assert plan.gauge is not None
    return replaced(book, plan, parts_from(plan, plan.gauge))


def replaced(book: Book, plan: Plan, new: tuple[Part, ...]) -> Redrawn:
    """A plan with new parts. A part of the same name stays the part it is, with its yarn and what
    is promised to it; a part the maker added to a drawn garment stays as it is; others go."""
    old, before = book.parts_of.get(plan.id, []), book.plan.get(plan.id)
    by_name = {_key(one.name): one for one in old}
    was = {_key(one.name): one for one in _drawn_before(before)}
    drawn = [_as_it_was(one, *(by.get(_key(one.name)) for by in (by_name, was))) for one in new]
    names = {_key(one.name): one.id for one in drawn}
    others = [one for one in old if _key(one.name) not in names]
    added = [one for one in others if _is_added(one, before)]
    remade = [one for one in old if _is_remade(one, was.get(_key(one.name)), names)]
    moved = {one.id: names[_key(one.name)] for one in old if _key(one.name) in names}
    moved |= {one.id: one.id for one in added}
    promises = book.promises_of.get(plan.id, [])
    return Redrawn(
        plan=plan,
        parts=tuple(_in_order([*drawn, *added])),
        gone=tuple(one for one in others if one not in added),
        kept=tuple(
            replace(one, part_id=moved[one.part_id]) for one in promises if one.part_id in moved
        ),
        freed=tuple(one for one in promises if one.part_id not in moved),
        remade=tuple(remade),
    )


def _key(name: str) -> str:
    return name.casefold()


def _is_added(part: Part, before: Plan | None) -> bool:
    """Whether the maker added a part herself to a garment that was drawn already."""
    drawn = part.id == part_id(part.plan_id, part.name)
    return before is not None and bool(before.design or before.pattern_id) and not drawn


def _drawn_before(plan: Plan | None) -> tuple[Part, ...]:
    """The parts as the plan had them drawn; none where it was not drawn, or no longer can be."""
    if plan is None or plan.gauge is None:
        return ()
    try:
        return parts_from(plan, plan.gauge)
    except ValueError:
        return ()


def _is_remade(part: Part, was: Part | None, names: Iterable[str]) -> bool:
    return was is not None and _key(part.name) in names and _rows(part) != _rows(was)


def _rows(part: Part) -> list[tuple[int, int, int]]:
    runs = part.shape.runs if isinstance(part.shape, Runs) else ()
    return [(run.rows, run.stitches, run.stitches_to) for run in runs]


def _as_it_was(drawn: Part, old: Part | None, was: Part | None) -> Part:
    """A drawn part with all that was said of the one it takes the place of, but its shape: of what
    a drawing gives as well, only what is not as it `was` drawn."""
    if old is None:
        return drawn
    told_otherwise: dict[str, Any] = {
        name: getattr(old, name)
        for name in SAID
        if was is not None and getattr(old, name) != getattr(was, name)
    }
    told = told_by(old.shape)
    shape = drawn.shape
    if told is not None and (told.use or told.ends > 1):
        shape = knit_shape(shape, replace(told, pattern=""))
    return replace(
        drawn,
        shape=shape,
        yarns=old.yarns,
        extras=old.extras,
        worked=old.worked,
        sequence=old.sequence,
        notes=old.notes,
        **told_otherwise,
    )


def _in_order(parts: Iterable[Part]) -> list[Part]:
    return [replace(one, position=position) for position, one in enumerate(parts, 1)]
