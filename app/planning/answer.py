"""From a plan's tally to its answer: odds, what is short, what will be left, part by part."""

from collections.abc import Sequence
from typing import TypeVar

from app.craft.odds import (
    expected_above_zero,
    joint_odds,
    normal_quantile,
    raise_to,
    whole_up,
)
from app.planning.answers import Allowance, GroupAnswer, PlanAnswer
from app.planning.cover import TOLERANCE_M
from app.planning.learning import Learnt
from app.planning.netting import GroupTally, PlanTally, total_need
from app.planning.part_answers import part_answers
from app.planning.steps import plan_steps
from app.planning.yarns import Lots

N = TypeVar("N", int, float)

SHORT_BELOW_M = 1.0
"""Less than this is not called short: it is within what the tails are cut to."""

AT_LEAST = 0.9
"""What is left "at least" is left this often."""


class FreeYarn:
    """Metres of each yarn that no plan has, handed to short plans in their order."""

    def __init__(self, by_yarn: dict[str, float]) -> None:
        self._left = by_yarn

    def offer(self, yarn_ids: tuple[str, ...]) -> float:
        """Metres of these yarns still free, in m."""
        return sum(self._left.get(one, 0.0) for one in yarn_ids)

    def yarns(self, yarn_ids: tuple[str, ...]) -> tuple[str, ...]:
        """Those of the yarns of which some is still free."""
        return tuple(one for one in yarn_ids if self._left.get(one, 0.0) > TOLERANCE_M)

    def want(self, yarn_ids: tuple[str, ...], metres: float) -> None:
        """Keep metres for a plan that will want them, so that no later plan counts on them."""
        for yarn_id in yarn_ids:
            taken = min(metres, self._left.get(yarn_id, 0.0))
            self._left[yarn_id] = self._left.get(yarn_id, 0.0) - taken
            metres -= taken


def answer(
    tally: PlanTally, lots: Lots, free: FreeYarn, covered: dict[str, float], learnt: Learnt
) -> PlanAnswer:
    """The answer for one plan; `covered` are the metres each promise really has."""
    margins = [one.margin for one in tally.groups]
    begun = bool(tally.needs) and all(one.known for one in tally.needs)
    odds, odds_u = joint_odds(margins) if begun else (0.0, 0.0)
    added = raise_to(margins, tally.sureness)
    groups = tuple(
        _group(one, metres, lots, free) for one, metres in zip(tally.groups, added, strict=True)
    )
    need = total_need(tally)
    return PlanAnswer(
        plan_id=tally.plan.id,
        name=tally.plan.name,
        state=tally.plan.state,
        begun=begun,
        sureness=tally.sureness,
        need=need,
        used_m=sum(one.used_m for one in tally.groups),
        promised_m=sum(one.promised_m for one in tally.groups),
        reserved_m=sum(sum(one.reserved.values()) for one in tally.groups),
        odds=odds,
        odds_u=odds_u,
        short_m=sum(one.short_m for one in groups),
        short_g=known_sum([one.short_g for one in groups if one.short_m]),
        short_skeins=known_sum([one.short_skeins for one in groups if one.short_m]),
        to_make_m=sum(one.to_make_m for one in groups),
        to_make_g=known_sum([one.to_make_g for one in groups if one.to_make_m]),
        to_make_skeins=known_sum([one.to_make_skeins for one in groups if one.to_make_m]),
        left_m=sum(one.left_m for one in groups),
        left_at_least_m=sum(one.left_at_least_m for one in groups),
        parts=part_answers(tally, lots, covered),
        groups=groups,
        allowances=_merged(tally),
        working=plan_steps(tally, need, learnt),
    )


def known_sum(amounts: Sequence[N | None]) -> N | None:
    """The sum of amounts; None where one of them is not known."""
    known = [one for one in amounts if one is not None]
    return sum(known[1:], known[0]) if known and len(known) == len(amounts) else None


def _group(tally: GroupTally, added: float, lots: Lots, free: FreeYarn) -> GroupAnswer:
    short = added if added >= SHORT_BELOW_M else 0.0
    yarn_ids = tuple(one for one in tally.group.yarn_ids if one in lots.book.yarn)
    chief = yarn_ids[0] if yarn_ids else None
    tex = lots.tex(chief) if chief else None
    usual = lots.usual_skein_m(chief) if chief else None
    offered, offered_of = free.offer(yarn_ids), free.yarns(yarn_ids)
    free.want(yarn_ids, short)
    to_make = max(0.0, short - offered)
    z = normal_quantile(AT_LEAST)
    return GroupAnswer(
        yarn_id=chief,
        yarn_ids=yarn_ids,
        part_ids=tally.group.part_ids,
        need=tally.need,
        supply=tally.supply,
        used_m=tally.used_m,
        promised_m=tally.promised_m,
        reserve_m=tally.reserve_m,
        reserved_m=sum(tally.reserved.values()),
        free_m=offered,
        free_yarn_ids=offered_of,
        odds=joint_odds([tally.margin])[0],
        short_m=short,
        short_g=short * tex.value / 1000 if tex else None,
        short_skeins=whole_up(short / usual) if usual else None,
        to_make_m=to_make,
        to_make_g=to_make * tex.value / 1000 if tex else None,
        to_make_skeins=whole_up(to_make / usual) if usual else None,
        left_m=expected_above_zero(tally.margin),
        left_at_least_m=max(0.0, tally.margin.value - z * tally.margin.u),
    )


def _merged(tally: PlanTally) -> tuple[Allowance, ...]:
    metres: dict[str, float] = {}
    for group in tally.groups:
        for line in group.allowances:
            metres[line.name] = metres.get(line.name, 0.0) + line.m
    return tuple(Allowance(name, m) for name, m in metres.items())
