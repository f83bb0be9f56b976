"""What a new proposal moves of the one before it, and why."""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from app.book.book import Book
from app.book.plan import Promise
from app.planning.answers import Reckoning
from app.planning.cover import TOLERANCE_M

Kind = Literal["moved", "put", "changed", "taken off"]


@dataclass(frozen=True, slots=True)
class Move:
    """One skein that a new proposal treats otherwise: `was` and `now` are the parts it lies with,
    `m` the metres it gives now, `why` the reason in words."""

    kind: Kind
    code: str
    was: tuple[str, ...]
    now: tuple[str, ...]
    m: float
    why: str


def moved(
    old: Iterable[Promise], new: Iterable[Promise], book: Book, reckoning: Reckoning
) -> tuple[Move, ...]:
    """What is otherwise in `new`, skein by skein in the order of their codes.

    `reckoning` is of the book without either. Nothing where nothing had been proposed before.
    """
    before, after = _by_holding(old), _by_holding(new)
    if not before:
        return ()
    holdings = sorted(before.keys() | after.keys(), key=lambda one: book.holding[one].code)
    found = (
        _move(book, reckoning, one, before.get(one, []), after.get(one, [])) for one in holdings
    )
    return tuple(one for one in found if one is not None)


def _move(
    book: Book, reckoning: Reckoning, holding_id: str, old: list[Promise], new: list[Promise]
) -> Move | None:
    was, now = _parts(book, old), _parts(book, new)
    mm, old_mm = sum(one.mm for one in new), sum(one.mm for one in old)
    if was == now and mm == old_mm:
        return None
    kind: Kind = "moved"
    if was == now:
        kind = "changed"
    elif not new or not old:
        kind = "put" if new else "taken off"
    why = "; ".join(dict.fromkeys(one.why for one in new)) or _off(reckoning, holding_id)
    return Move(kind, book.holding[holding_id].code, was, now, mm / 1000, why)


def _off(reckoning: Reckoning, holding_id: str) -> str:
    line = reckoning.shelf.get(holding_id)
    if line is None:
        return "it is no longer on the shelf"
    if line.free_m <= TOLERANCE_M:
        return "nothing of it is free any more"
    return "other skeins serve with fewer changes, cuts or scraps"


def _by_holding(promises: Iterable[Promise]) -> dict[str, list[Promise]]:
    found: dict[str, list[Promise]] = {}
    for one in promises:
        found.setdefault(one.holding_id, []).append(one)
    return found


def _parts(book: Book, promises: list[Promise]) -> tuple[str, ...]:
    parts = sorted((book.part[one.part_id] for one in promises), key=lambda one: one.position)
    return tuple(dict.fromkeys(one.name for one in parts))
