"""Spin more: of the yarn's own fleece, which the work list says already, or of another one."""

from collections.abc import Iterator
from functools import partial

from app.book.errand import Errand
from app.book.fleece import Fleece
from app.book.ids import new_id
from app.craft.counts import YARD_M
from app.craft.fleece import plied_length, single_length
from app.craft.odds import whole_up
from app.planning.learning import learn
from app.planning.time_pace import hours_of
from app.planning.ways_out.situation import Situation, least
from app.planning.ways_out.way import Amount, Effort, Proposal, Said, Way
from app.planning.ways_out.yarn_to_come import (
    MORE,
    lacking,
    to_spin_g,
    unclaimed_g,
    with_skeins,
)
from app.planning.what_if import ToCome, WhatIf

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
    hours = sum(_hours(situation, one) for one in seen.to_come)
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


def _hours(situation: Situation, skein: ToCome) -> float:
    """Hours at the wheel at the maker's own pace, or the usual one: the singles, then the ply."""
    plies, steps = situation.book.yarn[skein.yarn_id].plies or 2, situation.book.settings.steps
    learnt, shrink = learn(situation.book), situation.lots.shrinkage(skein.yarn_id).value
    plied = plied_length(max(skein.mm, 1) / 1000, shrink)
    if plies == 1:
        return hours_of(learnt, "spin", plied, skein.yarn_id).value
    singles = plies * single_length(plied, steps.take_up / 100)
    spinning = hours_of(learnt, "spin", singles, skein.yarn_id)
    return (spinning + hours_of(learnt, "ply", plied, skein.yarn_id)).value


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
