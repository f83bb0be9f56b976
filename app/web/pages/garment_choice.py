"""The skeins that could be put to a part: its own yarn first, then by how near their grist is."""

from dataclasses import dataclass
from math import inf, log

from app.book.code_order import in_order
from app.book.holding import Holding
from app.planning.answers import PartAnswer, ShelfLine
from app.planning.yarns import Lots
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
    """The skeins offered for a part; `hidden` more have free yarn but lie further off.

    `yarn` is the name of the part's own yarn, empty while it is to be chosen.
    """

    part_id: str
    yarn: str
    short_m: float
    offered: tuple[Choice, ...]
    hidden: int


def choices(known: Known, plan_id: str, part: PartAnswer, chosen: str = "") -> Choices:
    """What may be put to a part of a plan, its own yarn first; `chosen` stays among it anyway."""
    found = [_choice(one, plan_id, part.yarn_id, known) for one in _lines(known)]
    free = [one for one in found if one.free_mm > 0 or one.holding_id == chosen]
    aim = _aim(known, part.yarn_id)
    own = sorted(
        (one for one in free if one.own), key=lambda one: (one.tex or inf, in_order(one.code))
    )
    others = sorted((one for one in free if not one.own), key=lambda one: _distance(one, aim))
    offered = (*own[:MOST_OWN], *others[:MOST_OTHERS])
    yarn = known.book.yarn[part.yarn_id].name if part.yarn_id else ""
    hidden = len(free) - len(offered)
    return Choices(part.part_id, yarn, part.short_m, offered, hidden)


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


def _aim(known: Known, yarn_id: str | None) -> float | None:
    """The linear density to look for, in tex: that of the part's yarn, where it is known."""
    tex = Lots(known.book).tex(yarn_id) if yarn_id else None
    return tex.value if tex else None


def _distance(choice: Choice, aim: float | None) -> tuple[float, str]:
    if aim is None or not choice.tex:
        return (choice.tex or inf, choice.code)
    return (abs(log(choice.tex / aim)), choice.code)
