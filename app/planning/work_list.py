"""What to spin, wash, card and buy so that every plan is as sure as was asked.

Each fleece is called on once, plans in their order; what it cannot give must be bought. What must
be spun rounds up.
"""

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Literal

from app.book.yarn import Yarn
from app.craft.odds import whole_up
from app.planning.answers import GroupAnswer, PlanAnswer, WorkLine
from app.planning.wool_called import Called, WoolCalled
from app.planning.yarns import Lots

FIRST: dict[str, tuple[Literal["wash", "card"], str]] = {
    "raw": ("wash", "Skirt and wash"),
    "skirted": ("wash", "Wash"),
    "drying": ("wash", "Let dry, then weigh,"),
    "scoured": ("card", "Card or comb"),
}
"""What must happen to wool in a state before it can be spun."""

LEAST_M = 0.5
"""Less than this is not worth a line."""


@dataclass(slots=True)
class WorkList:
    """The list while it is made, and the wool it has called for."""

    lots: Lots
    wool: WoolCalled
    lines: list[WorkLine] = field(default_factory=list)

    def add(self, plan: PlanAnswer) -> None:
        """The lines of one plan; the plans before it have been added already."""
        if plan.begun:
            for group in plan.groups:
                if group.to_make_m > 0:
                    self._make(plan, group)

    def finished(self) -> tuple[WorkLine, ...]:
        """All lines: preparing first, then spinning and buying, then the maker's own."""
        return (*self._preparing(), *self.lines, *self._errands())

    def _make(self, plan: PlanAnswer, group: GroupAnswer) -> None:
        yarn = self.lots.book.yarn.get(group.yarn_id or "")
        if yarn is None:
            self.lines.append(_choose(plan, group))
            return
        left = group.to_make_m - self._spin(plan, group, yarn)
        if left > LEAST_M:
            self.lines.append(self._buy(plan, group, yarn, left))

    def _spin(self, plan: PlanAnswer, group: GroupAnswer, yarn: Yarn) -> float:
        """Metres the yarn's fleece can give to the group, after adding the line for them."""
        fleece = self.lots.book.fleece.get(yarn.fleece_id or "")
        tex = self.lots.tex(yarn.id)
        if fleece is None or tex is None:
            return 0.0
        called = self.wool.call(fleece, group.to_make_m * tex.value / 1000)
        if not called:
            return 0.0
        grams = sum(one.yarn_g for one in called)
        metres = grams * 1000 / tex.value
        usual = self.lots.usual_skein_m(yarn.id)
        self.lines.append(
            WorkLine(
                kind="spin",
                text=f"Spin {yarn.name} from {fleece.name}",
                yarn_id=yarn.id,
                yarn=yarn.name,
                m=whole_up(metres),
                g=whole_up(grams),
                skeins=whole_up(metres / usual) if usual else None,
                prepared_g=_whole(called, lambda one: one.prepared_g),
                raw_g=_whole(called, lambda one: one.raw_g),
                fleece_g=_whole(called, lambda one: one.now_g),
                state=called[0].holding.state if len(called) == 1 else None,
                fleece_id=fleece.id,
                fleece=fleece.name,
                plan_id=plan.plan_id,
                plan=plan.name,
                parts=_part_names(plan, group),
            )
        )
        return metres

    def _buy(self, plan: PlanAnswer, group: GroupAnswer, yarn: Yarn, metres: float) -> WorkLine:
        tex = self.lots.tex(yarn.id)
        balls = whole_up(metres * 1000 / yarn.ball_mm) if yarn.ball_mm else None
        if balls and yarn.ball_mm:
            metres = balls * yarn.ball_mm / 1000
        grams = metres * tex.value / 1000 if tex else None
        if balls and yarn.ball_mg:
            grams = balls * yarn.ball_mg / 1000
        like = yarn.name if yarn.bought else f"yarn like {yarn.name}, or fibre for it"
        return WorkLine(
            kind="buy",
            text=f"Buy {like}",
            yarn_id=yarn.id,
            yarn=yarn.name,
            m=whole_up(metres),
            g=None if grams is None else whole_up(grams),
            balls=balls,
            plan_id=plan.plan_id,
            plan=plan.name,
            parts=_part_names(plan, group),
        )

    def _preparing(self) -> list[WorkLine]:
        book, found = self.lots.book, []
        for holding_id, grams in self.wool.grams.items():
            holding = book.holding[holding_id]
            if holding.fleece_id and holding.state in FIRST:
                kind, verb = FIRST[holding.state]
                fleece = book.fleece[holding.fleece_id]
                found.append(
                    WorkLine(
                        kind=kind,
                        text=f"{verb} {fleece.name}",
                        g=whole_up(grams),
                        state=holding.state,
                        holding_id=holding_id,
                        fleece_id=fleece.id,
                        fleece=fleece.name,
                    )
                )
        return found

    def _errands(self) -> list[WorkLine]:
        plans = self.lots.book.plan
        return [
            WorkLine(
                kind=one.kind,
                text=one.text,
                plan_id=one.plan_id,
                plan=plans[one.plan_id].name if one.plan_id in plans else "",
                errand_id=one.id,
                done=one.done is not None,
            )
            for one in sorted(self.lots.book.errands, key=lambda one: one.id)
        ]


def _choose(plan: PlanAnswer, group: GroupAnswer) -> WorkLine:
    return WorkLine(
        kind="buy",
        text=f"Choose a yarn for {plan.name}, or buy one",
        m=whole_up(group.to_make_m),
        plan_id=plan.plan_id,
        plan=plan.name,
        parts=_part_names(plan, group),
    )


def _whole(called: tuple[Called, ...], grams: Callable[[Called], float]) -> int:
    return whole_up(sum(grams(one) for one in called))


def _part_names(plan: PlanAnswer, group: GroupAnswer) -> tuple[str, ...]:
    return tuple(one.name for one in plan.parts if one.part_id in group.part_ids)
