"""From groups to promises: metres for each part, their order, and a reason in words each.

A part is promised what it is expected to need. What a skein holds beyond that stays in reserve; a
skein that is there for the reserve alone is promised with that reason.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import floor

from app.book.ids import new_id
from app.book.plan import Promise
from app.planning.assign_groups import laid_out
from app.planning.assign_notes import notes
from app.planning.assign_pairs import Piece
from app.planning.assign_problem import Asked
from app.planning.assign_reasons import (
    AllThereIs,
    Alone,
    GoesOn,
    InHand,
    Note,
    Reason,
    Shared,
    Together,
)
from app.planning.solve.problem import Group, Problem, left


@dataclass(frozen=True, slots=True)
class Choice:
    """A skein chosen for a unit: `mm` of it, why, and what to know about it."""

    unit: int
    skein: int
    mm: int
    reason: Reason
    notes: tuple[Note, ...]

    def words(self) -> str:
        """The reason and the notes in one sentence."""
        return "; ".join([self.reason.words(), *(one.words() for one in self.notes)])


def choices(asked: Asked, problem: Problem, groups: Sequence[Group]) -> list[Choice]:
    """What the groups give to each unit, in the order of knitting."""
    return [one for group in groups for one in _of_group(asked, problem, group)]


def promises(asked: Asked, chosen: Sequence[Choice]) -> tuple[Promise, ...]:
    """The choices as promises in state "proposed", after those the parts have already."""
    book, found = asked.lots.book, []
    positions: dict[tuple[str, str], int] = {}
    for one in book.promises_of.get(asked.plan_id, []):
        key = one.part_id, one.role
        positions[key] = max(positions.get(key, 0), one.position)
    for choice in chosen:
        unit = asked.units[choice.unit]
        key = unit.part.part.id, unit.role.role
        positions[key] = positions.get(key, 0) + 1
        found.append(
            Promise(
                id=new_id(),
                plan_id=asked.plan_id,
                part_id=key[0],
                holding_id=asked.holdings[choice.skein],
                mm=choice.mm,
                role=key[1],
                state="proposed",
                why=choice.words(),
                position=positions[key],
            )
        )
    return tuple(found)


def _of_group(asked: Asked, problem: Problem, group: Group) -> list[Choice]:
    pieces = laid_out(asked, problem, group)
    metres = _promised(asked, pieces)
    kept = [one for one in pieces if metres[one.unit, one.skein] > 0]
    return [
        Choice(
            one.unit,
            one.skein,
            floor(1000 * metres[one.unit, one.skein] + 1e-6),
            _reason(asked, problem, group, one, kept),
            notes(asked, problem, one, kept),
        )
        for one in kept
    ]


def _promised(asked: Asked, pieces: Sequence[Piece]) -> dict[tuple[int, int], float]:
    """Metres promised by unit and skein: what is needed; the whole of a piece whose skein would
    else not be touched; and the end of a skein that tails were kept back from, where it lacks."""
    metres = {(one.unit, one.skein): one.m - one.extra_m for one in pieces}
    for one in pieces:
        if sum(m for (_, skein), m in metres.items() if skein == one.skein) == 0:
            metres[one.unit, one.skein] = one.m
    for one in pieces:
        given = sum(m for (unit, _), m in metres.items() if unit == one.unit)
        taken = sum(m for (_, skein), m in metres.items() if skein == one.skein)
        lacking = asked.units[one.unit].missing_m - given
        metres[one.unit, one.skein] += max(0.0, min(lacking, asked.can_take_m[one.skein] - taken))
    return metres


def _reason(
    asked: Asked, problem: Problem, group: Group, piece: Piece, kept: Sequence[Piece]
) -> Reason:
    own = [one for one in kept if one.unit == piece.unit]
    units = list(dict.fromkeys(one.unit for one in kept if one.skein == piece.skein))
    place = units.index(piece.unit)
    if piece.extra_m == piece.m:
        return InHand()
    if place > 0:
        return GoesOn(_name(asked, units[place - 1]))
    if place < len(units) - 1:
        after = tuple(_name(asked, one) for one in units[place + 1 :])
        return Shared(_name(asked, piece.unit), after)
    if left(problem, group) < 0 and len(own) > 0 and own[-1] == piece:
        return AllThereIs(_name(asked, piece.unit))
    if len(own) > 1:
        others = (problem.skeins[one.skein].code for one in own if one != piece)
        return Together(_name(asked, piece.unit), tuple(others))
    spare = problem.skeins[piece.skein].metres - piece.m
    return Alone(_name(asked, piece.unit), spare < max(1, problem.prices.scrap_below))


def _name(asked: Asked, unit: int) -> str:
    return asked.units[unit].part.part.name
