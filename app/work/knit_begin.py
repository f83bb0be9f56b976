"""Cast a garment on: its skeins are settled, and it keeps the numbers it is begun with."""

from dataclasses import replace
from datetime import date

from sqlmodel import Session

from app.book.plan import Plan
from app.planning.knitting.cast_on import cast_on
from app.planning.needs import needs_of
from app.planning.yarns import Lots
from app.store.records import load_book
from app.work.plan_save import change_plan


def begin_knitting(session: Session, plan: Plan, day: date) -> Plan:
    """The plan is being knit from `day` on; answers it as it is kept now."""
    book = load_book(session)
    needs = needs_of(plan, book.parts_of.get(plan.id, []), Lots(book))
    loops = {one.part.id: one.loop for one in needs if one.loop is not None}
    begun = replace(plan, state="being knit", cast_on=cast_on(day, loops))
    change_plan(session, begun)
    return begun
