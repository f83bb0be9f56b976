"""A garment keeps the numbers it was cast on with: what is learned later changes no history."""

from datetime import date

from app.book.knitting import CastOn, Settled
from app.book.plan import Part, Plan
from app.craft.figure import Figure
from app.craft.working import Step

LOOP = "yarn in a stitch, "


def cast_on(day: date, loops: dict[str, Figure]) -> CastOn:
    """What is kept on the day a garment is cast on: the yarn in a stitch (cm) of each part."""
    numbers = (Settled(LOOP + part, loop.value, loop.u) for part, loop in loops.items())
    return CastOn(day, tuple(numbers))


def as_cast_on(plan: Plan, part: Part, now: Figure) -> tuple[Figure, tuple[Step, ...]] | None:
    """The yarn in a stitch, in cm, that a part was cast on with, its causes being those of `now`;
    None for a part that was not begun then."""
    numbers = plan.cast_on.numbers if plan.cast_on else ()
    kept = next((one for one in numbers if one.name == LOOP + part.id), None)
    if kept is None or plan.cast_on is None:
        return None
    share = kept.u / now.u if now.u > 0 else 0.0
    causes = {name: part_u * share for name, part_u in now.causes.items()}
    how = f"as it was reckoned on {plan.cast_on.day.isoformat()}, when it was cast on"
    step = Step("Yarn in one stitch", how, kept.value, "cm", kept.u)
    return Figure(kept.value, "cm", causes), (step,)
