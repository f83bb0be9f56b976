"""The quick reckoning: ask it, and keep what it drew up as a plan."""

from sqlmodel import Session

from app.book.plan import Plan, RoleYarn
from app.book.settings import Settings
from app.planning.quick import Question, QuickAnswer, quick
from app.store.records import put
from app.work.plan_save import add_plan
from app.work.refusal import Refusal


def ask(question: Question, settings: Settings) -> QuickAnswer:
    """The answer, nothing saved; Refusal beside the chest for a body no such garment fits on."""
    try:
        return quick(question, settings)
    except ValueError as unfit:
        raise Refusal("chest", f"{str(unfit)[:1].upper()}{str(unfit)[1:]}.") from None


def keep(session: Session, answer: QuickAnswer, person_id: str | None, yarn_id: str | None) -> Plan:
    """Keep the plan the answer was reckoned on, with its parts."""
    yarns = (RoleYarn("main", yarn_id),) if yarn_id else ()
    plan = add_plan(
        session,
        Plan(
            answer.plan.id,
            answer.plan.name,
            person_id=person_id,
            gauge=answer.plan.gauge,
            yarns=yarns,
        ),
    )
    for part in answer.parts:
        put(session, part)
    return plan
