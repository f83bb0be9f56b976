"""The yarns a plan's parts may be knit in, alone or mixed, and what an unlike yarn costs.

A part is knit in the yarn meant for it, or in one that reads as the same beside it. A part that no
yarn was chosen for takes any that suits it.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations

from app.planning.colours_alike import one_colour, reads_as_one
from app.planning.needs import PartNeed, RoleNeed
from app.planning.proposal import suits
from app.planning.yarns import Lots

MIXED = 0.5
"""What a mixture costs of what another yarn altogether would."""

MOST_YARNS = 12
"""The most yarns tried for a part that none was chosen for."""


@dataclass(frozen=True, slots=True)
class Unit:
    """One role of one part, in all its copies, and the metres it still misses."""

    part: PartNeed
    role: RoleNeed
    missing_m: float


def kinds(units: Sequence[Unit], lots: Lots) -> list[tuple[str, ...]]:
    """Each yarn some unit may be knit in, then each mixture of one of them with another yarn."""
    single = dict.fromkeys(yarn for unit in units for yarn in _yarns_of(unit, lots))
    beside = {yarn: None for one in single for yarn in lots.skeins if reads_as_one(one, yarn, lots)}
    known = list(single | beside)
    mixed = [
        pair for pair in combinations(known, 2) if pair[0] in single and reads_as_one(*pair, lots)
    ]
    return [*((one,) for one in single), *mixed]


def unlike(unit: Unit, kind: tuple[str, ...], price: float, lots: Lots) -> float | None:
    """What a unit costs in a kind, at so much for ten metres; None where it may not be."""
    may = [one for one in _yarns_of(unit, lots) if one in kind]
    if not may:
        return None
    chief = None if unit.role.yarn_id else units_chief(unit, lots)
    other = min(_beside_chief(one, chief, lots) for one in may)
    return price * unit.missing_m / 10 * max(other, MIXED if len(kind) > 1 else 0.0)


def units_chief(unit: Unit, lots: Lots) -> str | None:
    """The yarn most of the unit's plan is meant for."""
    plan = lots.book.plan[unit.part.part.plan_id]
    return next((one.yarn_id for one in plan.yarns), None)


def _yarns_of(unit: Unit, lots: Lots) -> list[str]:
    if unit.role.yarn_id:
        return [unit.role.yarn_id]
    suited = [one for one in lots.skeins if suits(lots, one, unit.part)]
    chief = units_chief(unit, lots)
    return sorted(suited, key=lambda one: (_beside_chief(one, chief, lots), one))[:MOST_YARNS]


def _beside_chief(yarn_id: str, chief: str | None, lots: Lots) -> float:
    """0 for the plan's chief yarn or one of its fibre and colour, 1 for another."""
    if chief is None or yarn_id == chief:
        return 0.0
    one, other = lots.book.yarn[yarn_id], lots.book.yarn[chief]
    same = one.fibre.casefold() == other.fibre.casefold() and one_colour(one, other)
    return 0.0 if same else 1.0
