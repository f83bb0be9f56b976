"""How much of a skein a plan may be promised, and who else has the rest."""

from collections.abc import Iterable
from dataclasses import dataclass
from math import floor

from app.book.plan import Promise
from app.planning.answers import Held, ShelfLine

NEAR_MM = 1e-6
"""Tolerance before a floor, in mm, so that 68 000.0 − ε mm stays 68 m."""


@dataclass(frozen=True, slots=True)
class NotFree:
    """Why a promise was refused: what was asked, what may be had (mm) and who holds the rest:
    other plans `elsewhere`, and the plan's `own` parts. Neither where this is all the skein has."""

    holding_id: str
    asked_mm: int
    available_mm: int
    elsewhere: tuple[Held, ...]
    own: tuple[Held, ...] = ()


class BeyondFree(Exception):
    """More of a skein was asked for than is free."""

    def __init__(self, reason: NotFree) -> None:
        super().__init__(f"{reason.asked_mm} mm asked, {reason.available_mm} mm free")
        self.reason = reason


def available_mm(line: ShelfLine, plan_id: str) -> int:
    """What a plan may still take of a skein, in mm: the free yarn and the plan's own reserve."""
    return max(0, floor((line.free_m + _own_reserve_m(line, plan_id)) * 1000 + NEAR_MM))


def elsewhere(line: ShelfLine, plan_id: str) -> tuple[Held, ...]:
    """Promises and reserves on a skein that belong to other plans."""
    return tuple(held for held in line.promised_to if held.plan_id != plan_id)


def refuse_beyond(line: ShelfLine, plan_id: str, mm: int, already: Iterable[Promise] = ()) -> None:
    """BeyondFree where `mm` is more than the plan may have, counting what `already` holds of it."""
    already = tuple(already)
    room = available_mm(line, plan_id) + sum(one.mm for one in already)
    if mm > room:
        own = _own(line, plan_id, {None, *(one.part_id for one in already)})
        raise BeyondFree(NotFree(line.holding_id, mm, room, elsewhere(line, plan_id), own))


def _own(line: ShelfLine, plan_id: str, without: set[str | None]) -> tuple[Held, ...]:
    mine = (held for held in line.promised_to if held.plan_id == plan_id)
    return tuple(held for held in mine if held.part_id not in without)


def _own_reserve_m(line: ShelfLine, plan_id: str) -> float:
    own = (held.m for held in line.promised_to if held.plan_id == plan_id and held.part_id is None)
    return sum(own)
