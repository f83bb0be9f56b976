"""Spin more: of the yarn's own fleece, which the work list says already, or of another one."""

from collections.abc import Iterator
from functools import partial

from app.book.errand import Errand
from app.book.fleece import Fleece
from app.book.ids import new_id
from app.craft.counts import YARD_M
from app.craft.odds import whole_up
from app.craft.ranges import hours_for
from app.planning.ways_out.situation import Situation, least
from app.planning.ways_out.way import Amount, Effort, Proposal, Said, Way
from app.planning.ways_out.yarn_to_come import (
    MORE,
    lacking,
    to_spin_g,
    unclaimed_g,
    with_skeins,
)
from app.planning.what_if import WhatIf

G_AN_HOUR = 32.0
"""Singles on a wheel (a spinner's published measurement)."""

PLY_SHARE = 1 / 3
"""What plying takes beside the spinning of its singles (practice)."""

OTHERS = 2
"""Other fleeces offered at most."""


def find(situation: Situation) -> Iterator[Proposal]:
    """The yarns' own fleeces first, then other fleeces of the same fibre."""
    wanted = {key: m for key, m in lacking(situation).items() if _spun(situation, key)}
    own = {key: _within(situation, key, m) for key, m in wanted.items()}
    if any(own.values()):
        yield from _from_own(situation, own)
    if len(wanted) == 1:
        ((yarn_id, metres),) = wanted.items()
        for fleece in _other_fleeces(situation, yarn_id, metres)[:OTHERS]:
            yield from _from_other(situation, yarn_id, metres, fleece)


def _from_own(situation: Situation, metres: dict[str, float]) -> Iterator[Proposal]:
    _, seen, _ = least(situation, MORE, partial(_scaled, situation, metres))
    names = [
        f"{{}} of {situation.book.yarn[key].name} from {_fleece_name(situation, key)}"
        for key in metres
        if metres[key] > 0
    ]
    yield _proposal(situation, "spin", f"Spin {' and '.join(names)}", seen, WhatIf(), True)


def _from_other(
    situation: Situation, yarn_id: str, metres: float, fleece: Fleece
) -> Iterator[Proposal]:
    _, seen, _ = least(situation, MORE, partial(_scaled, situation, {yarn_id: metres}))
    yarn, (skein,) = situation.book.yarn[yarn_id], seen.to_come
    text = f"Spin {_told(situation, skein.mm)} like {yarn.name} from {fleece.name}"
    taken = WhatIf((Errand(new_id(), text, "spin", situation.plan_id),))
    title = f"Spin {{}} like {yarn.name} from {fleece.name}"
    yield _proposal(situation, f"spin-{fleece.id}", title, seen, taken, False)


def _proposal(
    situation: Situation, key: str, title: str, seen: WhatIf, taken: WhatIf, listed: bool
) -> Proposal:
    grams = to_spin_g(situation, sum(one.mg for one in seen.to_come) / 1000)
    plied = any((situation.book.yarn[one.yarn_id].plies or 2) > 1 for one in seen.to_come)
    hours = hours_for(grams, G_AN_HOUR) * (1 + PLY_SHARE * plied)
    return Proposal(
        key=key,
        title=Said(title, tuple(Amount(one.mm / 1000, "yarn") for one in seen.to_come)),
        effort=Effort(
            60 * hours / max(1, situation.book.settings.evening_minutes),
            Said(
                "{} of prepared fibre, about {} at the wheel",
                (Amount(grams, "wool"), Amount(hours, "hours")),
            ),
        ),
        change=taken,
        seen=seen,
        about=situation.plan_id,
        notes=(Said("So it stands once the yarn is spun, finished and reeled"),),
        listed=listed,
    )


def _scaled(situation: Situation, metres: dict[str, float], more: float) -> WhatIf:
    return with_skeins(situation, {key: m * more for key, m in metres.items()})


def _spun(situation: Situation, yarn_id: str) -> bool:
    return not situation.book.yarn[yarn_id].bought and situation.lots.tex(yarn_id) is not None


def _within(situation: Situation, yarn_id: str, metres: float) -> float:
    """Of so many metres what the yarn's own fleece can give; it may be called on for them
    already."""
    fleece_id = situation.book.yarn[yarn_id].fleece_id
    tex = situation.lots.tex(yarn_id)
    if fleece_id is None or tex is None:
        return 0.0
    mine = (situation.plan_id, yarn_id, "spin")
    called = [
        one.g or 0
        for one in situation.reckoning.work
        if (one.plan_id, one.yarn_id, one.kind) == mine
    ]
    grams = unclaimed_g(situation, fleece_id) + sum(called)
    return min(metres * max(MORE), grams * 1000 / tex.value) / max(MORE)


def _other_fleeces(situation: Situation, yarn_id: str, metres: float) -> list[Fleece]:
    """Fleeces of the same fibre that can give it all, the fullest first."""
    yarn, tex = situation.book.yarn[yarn_id], situation.lots.tex(yarn_id)
    grams = metres * (tex.value if tex else 0.0) / 1000
    alike = [
        one
        for one in situation.book.fleeces
        if one.id != yarn.fleece_id
        and one.fibre.casefold() == yarn.fibre.casefold()
        and unclaimed_g(situation, one.id) >= grams * max(MORE)
    ]
    return sorted(alike, key=lambda one: (-unclaimed_g(situation, one.id), one.id))


def _fleece_name(situation: Situation, yarn_id: str) -> str:
    return situation.book.fleece[situation.book.yarn[yarn_id].fleece_id or ""].name


def _told(situation: Situation, mm: int) -> str:
    """A length as a line of the work list keeps it."""
    unit = situation.book.settings.length_unit
    return f"{whole_up(mm / 1000 / (1 if unit == 'm' else YARD_M))} {unit}"


WAY = Way("spin", find)
