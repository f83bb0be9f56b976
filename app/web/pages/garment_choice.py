"""The skeins that could be put to a part: its own yarn first, then by how near their grist is."""

from dataclasses import dataclass
from math import inf, log

from app.book.holding import Holding
from app.planning.answers import PartAnswer, ShelfLine
from app.work.promise_free import available_mm
from app.work.reckoning import Known

MOST_OWN = 40
MOST_OTHERS = 20
"""How many skeins a choice shows at most, of the part's own yarn and of all others."""


@dataclass(frozen=True, slots=True)
class Choice:
    """A skein with yarn this plan may have: `free_mm` of it; `tex` is its linear density."""

    holding_id: str
    code: str
    yarn: str
    colour: str
    free_mm: int
    tex: float | None
    own: bool


@dataclass(frozen=True, slots=True)
class Choices:
    """The skeins offered for a part; `hidden` more have free yarn but lie further off."""

    part_id: str
    short_m: float
    offered: tuple[Choice, ...]
    hidden: int


def choices(known: Known, plan_id: str, part: PartAnswer, chosen: str = "") -> Choices:
    """What may be put to a part of a plan, its own yarn first; `chosen` stays among it anyway."""
    found = [_choice(one, plan_id, part.yarn_id, known) for one in _lines(known)]
    free = [one for one in found if one.free_mm > 0 or one.holding_id == chosen]
    aim = _usual_tex([one for one in free if one.own])
    own = sorted((one for one in free if one.own), key=lambda one: (one.tex or inf, one.code))
    others = sorted((one for one in free if not one.own), key=lambda one: _distance(one, aim))
    offered = (*own[:MOST_OWN], *others[:MOST_OTHERS])
    return Choices(part.part_id, part.short_m, offered, len(free) - len(offered))


def _lines(known: Known) -> list[tuple[Holding, ShelfLine]]:
    shelf = known.reckoning.shelf
    return [(known.book.holding[holding_id], line) for holding_id, line in shelf.items()]


def _choice(
    held: tuple[Holding, ShelfLine], plan_id: str, yarn_id: str | None, known: Known
) -> Choice:
    holding, line = held
    yarn = known.book.yarn.get(holding.yarn_id or "")
    return Choice(
        holding_id=holding.id,
        code=holding.code,
        yarn=yarn.name if yarn else "",
        colour=holding.colour or (yarn.colour if yarn else ""),
        free_mm=available_mm(line, plan_id),
        tex=1000 * line.held_g / line.held.value if line.held.value > 0 else None,
        own=yarn_id is not None and holding.yarn_id == yarn_id,
    )


def _usual_tex(own: list[Choice]) -> float | None:
    known = sorted(one.tex for one in own if one.tex)
    return known[len(known) // 2] if known else None


def _distance(choice: Choice, aim: float | None) -> tuple[float, str]:
    if aim is None or not choice.tex:
        return (choice.tex or inf, choice.code)
    return (abs(log(choice.tex / aim)), choice.code)
