"""On the demo's needles: cast on, balls weighed on the way, and a garment that came off."""

from dataclasses import dataclass, replace
from datetime import date

from app.book.holding import Holding
from app.book.knitting import Weighing
from app.book.person import Measure
from app.book.plan import Part, Plan
from app.book.woolbook import Portion, mm_of, use
from app.planning.knitting.cast_on import cast_on
from app.planning.knitting.took import took
from app.planning.needs_planned import planned_needs
from app.planning.yarns import Lots
from tests.demo.diary import Diary
from tests.demo.shelf import Wool

HOURS_OF_THE_WAISTCOAT = 21


@dataclass(frozen=True)
class OnScale:
    """A ball with so many grams left after so many rows; the last rows of one that was knit up
    have no weighing."""

    code: str
    rows: int
    g: int
    day: date


BALLS_OF_THE_BODY = (
    OnScale("B-01", 0, 96, date(2026, 9, 15)),
    OnScale("B-01", 20, 57, date(2026, 9, 20)),
    OnScale("B-01", 40, 18, date(2026, 9, 25)),
    OnScale("B-01", 49, 0, date(2026, 9, 27)),
    OnScale("B-02", 49, 101, date(2026, 9, 27)),
    OnScale("B-02", 72, 55, date(2026, 10, 4)),
    OnScale("B-02", 92, 16, date(2026, 10, 9)),
    OnScale("B-02", 100, 0, date(2026, 10, 11)),
    OnScale("B-03", 100, 88, date(2026, 10, 11)),
    OnScale("B-03", 111, 66, date(2026, 10, 18)),
)
"""She knits a little closer than her swatch."""


def on_its_way(diary: Diary, plan: Plan, day: date) -> Plan:
    """Cast on: the plan keeps the numbers of that day."""
    book = diary.book()
    needs = planned_needs(plan, book.parts_of.get(plan.id, []), Lots(book))
    loops = {one.part.id: one.loop for one in needs if one.loop}
    begun: Plan = diary.change(plan, replace(plan, state="being knit", cast_on=cast_on(day, loops)))
    return begun


def weigh_in(
    diary: Diary, wool: Wool, garment: Holding, plan: Plan, part: Part, seen: OnScale
) -> None:
    """Weigh a ball on the needles: what it lost is in the garment."""
    skein = wool.skeins[seen.code]
    now = diary.held[skein.id]
    gone = now.mg - 1000 * seen.g
    if gone:
        taken = Portion(skein, gone, mm_of(now, gone))
        diary.post(seen.day, use(diary.held, [taken], garment))
    if seen.g:
        where = plan.id, part.id, 1, seen.rows, skein.id
        scale = seen.g * 1000, str(seen.g), 1000, seen.day, 20 * 60
        diary.add(Weighing(diary.new_id(), *where, *scale))


def came_off(diary: Diary, old: Plan, day: date) -> Plan:
    """Finished: what its parts took is kept, with the hours and its size after washing."""
    plan = next(one for one in diary.book().plans if one.id == old.id)
    parts = took(diary.book(), plan.id)
    whole = sum(one.mg or 0 for one in parts)
    minutes = 60 * HOURS_OF_THE_WAISTCOAT
    timed = (replace(one, minutes=round(minutes * (one.mg or 0) / whole)) for one in parts)
    done = replace(
        plan,
        state="finished",
        finished_on=day,
        took=tuple(timed),
        measured=(Measure("chest", 1070), Measure("body length", 600)),
        notes="The armholes could be 1 cm deeper next time.",
    )
    finished: Plan = diary.change(plan, done)
    return finished
