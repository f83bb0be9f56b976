"""A plan as one line: the same wherever it appears, with its warning."""

from dataclasses import dataclass
from datetime import date

from app.book.book import Book
from app.book.plan import Plan
from app.book.words import OPEN_STATES
from app.planning.answers import PlanAnswer, Reckoning
from app.planning.turn import in_turn
from app.web.pages.answer import Sentence, answer_in_short, done_sentence
from app.web.shown import Shown


@dataclass(frozen=True, slots=True)
class PlanLine:
    """What a list says of a plan; `url` is its page."""

    plan_id: str
    name: str
    url: str
    person: str
    state: str
    wanted_by: date | None
    answer: Sentence


def plan_line(plan: Plan, answer: PlanAnswer | None, book: Book, shown: Shown) -> PlanLine:
    """The line of one plan; `answer` is not asked where it wants no more yarn."""
    if answer is not None and plan.state in OPEN_STATES:
        said = answer_in_short(answer, book, shown)
    else:
        said = done_sentence(plan, book, shown)
    return PlanLine(
        plan_id=plan.id,
        name=plan.name,
        url=f"/garments/{plan.id}",
        person=book.person[plan.person_id].name if plan.person_id else "",
        state=plan.state,
        wanted_by=plan.wanted_by,
        answer=said,
    )


def plan_lines(
    book: Book, reckoning: Reckoning, shown: Shown, person_id: str | None = None
) -> tuple[PlanLine, ...]:
    """The lines of all plans, or of one person's, in the order of the garments."""
    answers = {one.plan_id: one for one in reckoning.plans}
    plans = [one for one in in_turn(book.plans) if person_id in (None, one.person_id)]
    return tuple(plan_line(one, answers.get(one.id), book, shown) for one in plans)
