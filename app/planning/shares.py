"""How a stated total is divided among parts: what is unsure of one part is so of the others with
the opposite sign, and the total is no less sure for it."""

from app.book.plan import Part, Plan
from app.book.shape import Stated

Causes = dict[str, float]


def share_causes(plan: Plan, parts: list[Part]) -> dict[str, Causes]:
    """For each part with a share of a stated total, what the unsure shares of all of them do to
    it, in m of what is stated. The shares are taken as independent of each other, then made to
    sum to one, so the contributions of each cause cancel over the parts."""
    metres = {one.id: _stated_m(one) for one in parts if _stated_m(one) and one.shape_u_pct}
    whole = sum(metres.values())
    unsure = {one.id: one for one in parts if one.id in metres}
    return {
        mine: {
            f"the share of {plan.name}, {other.name}": _moved(mine, other, metres, whole)
            for other in unsure.values()
        }
        for mine in metres
        if len(metres) > 1
    }


def _moved(mine: str, other: Part, metres: dict[str, float], whole: float) -> float:
    own = 1.0 if mine == other.id else 0.0
    return metres[mine] * (own - metres[other.id] / whole) * other.shape_u_pct / 100


def _stated_m(part: Part) -> float:
    return part.shape.mm / 1000 * part.copies if isinstance(part.shape, Stated) else 0.0
