"""Whether anything is planned."""

from sqlalchemy import select
from sqlmodel import Session, col

from app.store.tables.plan import PlanRow


def any_plan(session: Session) -> bool:
    """Whether there is a plan, in any state."""
    return session.execute(select(col(PlanRow.id)).limit(1)).first() is not None
