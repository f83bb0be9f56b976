"""What to spin, wash, card and buy so that every plan is as sure as was asked.

Each fleece is called on once, plans in their order; what it cannot give must be bought. The chain
from yarn back to raw wool is the one of `app.craft.fleece`. What must be spun rounds up.
"""

from dataclasses import dataclass, field

from app.book.fleece import Fleece
from app.book.holding import Holding
from app.book.yarn import Yarn
from app.craft.figure import Figure
from app.craft.fleece import wool_for
from app.craft.odds import whole_up
from app.planning.answers import GroupAnswer, PlanAnswer, WorkLine
from app.planning.fleeces import becomes, fleece_yield, losses_for, wool_g, wool_of
from app.planning.yarns import Lots

FIRST = {
    "raw": ("wash", "Skirt and wash"),
    "skirted": ("wash", "Wash"),
    "drying": ("wash", "Let dry, then weigh,"),
    "scoured": ("card", "Card or comb"),
}
"""What must happen to wool in a state before it can be spun."""


@dataclass(slots=True)
class WorkList:
    """The list while it is made. `called_for` are grams of each fleece, as it is now."""

    lots: Lots
    called_for: dict[str, float] = field(default_factory=dict)
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
        fleece = self.lots.book.fleece.get(yarn.fleece_id or "")
        left = group.to_make_m
        tex = self.lots.tex(yarn.id)
        if fleece is not None and tex is not None:
            left -= self._spin(plan, group, yarn, fleece, tex.value)
        if left > 0.5:
            self.lines.append(self._buy(plan, group, yarn, left))

    def _spin(
        self, plan: PlanAnswer, group: GroupAnswer, yarn: Yarn, fleece: Fleece, tex: float
    ) -> float:
        """Metres this fleece can give to the group, after adding the line for them."""
        holdings = wool_of(self.lots.book).get(fleece.id, [])
        now_g = wool_g(self.lots.book, holdings)
        _, yarn_g, _ = becomes(self.lots.book, fleece, holdings)
        if now_g <= 0 or yarn_g.value <= 0:
            return 0.0
        per_gram = yarn_g.value / now_g
        free_g = max(0.0, now_g - self.called_for.get(fleece.id, 0.0)) * per_gram
        grams = min(group.to_make_m * tex / 1000, free_g)
        if grams < 0.5:
            return 0.0
        self.called_for[fleece.id] = self.called_for.get(fleece.id, 0.0) + grams / per_gram
        metres = grams * 1000 / tex
        prepared_g, raw_g = self._behind(fleece, holdings, grams)
        self.lines.append(
            WorkLine(
                kind="spin",
                text=f"Spin {yarn.name} from {fleece.name}",
                yarn_id=yarn.id,
                yarn=yarn.name,
                m=whole_up(metres),
                g=whole_up(grams),
                prepared_g=whole_up(prepared_g),
                raw_g=whole_up(raw_g),
                fleece_id=fleece.id,
                fleece=fleece.name,
                plan_id=plan.plan_id,
                plan=plan.name,
                parts=_part_names(plan, group),
            )
        )
        return metres

    def _behind(
        self, fleece: Fleece, holdings: list[Holding], yarn_g: float
    ) -> tuple[float, float]:
        """Grams of prepared fibre and of raw fleece behind so much finished yarn."""
        share, _ = fleece_yield(fleece)
        prepared = "combed" if any(one.state == "combed" for one in holdings) else "carded"
        losses = losses_for(prepared, self.lots.book.settings.steps)
        wanted = Figure(yarn_g, "g")
        fibre = wool_for(wanted, prepared, share, losses)
        return fibre.value, wool_for(wanted, "raw", share, losses).value

    def _buy(self, plan: PlanAnswer, group: GroupAnswer, yarn: Yarn, metres: float) -> WorkLine:
        tex = self.lots.tex(yarn.id)
        balls = whole_up(metres * 1000 / yarn.ball_mm) if yarn.ball_mm else None
        if balls and yarn.ball_mm:
            metres = balls * yarn.ball_mm / 1000
        grams = metres * tex.value / 1000 if tex else None
        if balls and yarn.ball_mg:
            grams = balls * yarn.ball_mg / 1000
        return WorkLine(
            kind="buy",
            text=f"Buy {yarn.name}"
            if yarn.bought
            else f"Buy yarn like {yarn.name}, or fibre for it",
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
        book, wool = self.lots.book, wool_of(self.lots.book)
        found = []
        for fleece_id, grams in self.called_for.items():
            fleece = book.fleece[fleece_id]
            states = [one.state for one in wool.get(fleece_id, []) if one.state in FIRST]
            if states and states[0]:
                kind, verb = FIRST[states[0]]
                found.append(
                    WorkLine(
                        kind="wash" if kind == "wash" else "card",
                        text=f"{verb} {fleece.name}",
                        g=whole_up(grams),
                        fleece_id=fleece_id,
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


def _part_names(plan: PlanAnswer, group: GroupAnswer) -> tuple[str, ...]:
    return tuple(one.name for one in plan.parts if one.part_id in group.part_ids)
