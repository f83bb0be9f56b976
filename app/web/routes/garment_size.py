"""Which size of a written pattern a garment is to be knit in: asked, and taken into the plan."""

from fastapi import APIRouter, Request, Response
from sqlmodel import Session

from app.book.plan import Plan
from app.craft.pattern_gauge import CASES
from app.planning.which_size import WhichSize
from app.web.errors import NotNow
from app.web.forms.filled import Filled
from app.web.forms.reader import Posted, Reader
from app.web.forms.which_size import asked_values, offered_patterns, read_asked
from app.web.garment_shown import as_opened, plan_or_missing, said_with
from app.web.pages.which_size import which_size_page
from app.web.session import ReadingSession, WritingSession
from app.web.templating import after_save, render, shown_in
from app.work.pattern_take import BY_WORDS, ask_size, take_size
from app.work.plan_effect import save_and_tell
from app.work.reckoning import Known, current
from app.work.refusal import Refusal

router = APIRouter(prefix="/garments/{plan_id}/size")

PAGE = "pages/garments/size.html"
SETTLED = "{} is cast on or finished: its size is settled."


@router.get("")
def ask(request: Request, session: ReadingSession, plan_id: str) -> Response:
    known, plan = current(session), _intended(session, plan_id)
    given = dict(request.query_params)
    values = asked_values(known.book, plan, given)
    reader, found = _answer(known, plan, values)
    quiet = reader.ok or "follows" not in given
    form = Filled(values, {} if quiet else dict(reader.errors))
    page = which_size_page(known.book, plan, form, found, shown_in(known.book.settings))
    return render(request, PAGE, page, status=200 if quiet else 422)


@router.post("")
def take(request: Request, session: WritingSession, posted: Posted, plan_id: str) -> Response:
    plan, known = _intended(session, plan_id), current(session)
    reader = Reader(posted, known.book.settings)
    as_opened(plan, reader.stamp, f"The plan of {plan.name}", plan_id)
    pattern_id = reader.choice("pattern", offered_patterns(known.book, plan))
    case, by = reader.choice("follows", CASES), reader.choice("by", BY_WORDS)
    if pattern_id is None or case is None or by is None:
        raise NotNow("Choose a size of a pattern.", f"/garments/{plan_id}/size")
    pattern, name = known.book.pattern[pattern_id], reader.typed("size")
    try:
        done, effect = save_and_tell(
            session, plan_id, lambda: take_size(session, plan, pattern, name, case, by)
        )
    except Refusal as refusal:
        raise NotNow(refusal.message, f"/garments/{plan_id}/size") from None
    freed = " What was promised to parts it no longer has is free again." if done.freed else ""
    message = f"{plan.name} is size {name} of {pattern.name} now.{freed}"
    return after_save(request, f"/garments/{plan_id}", said_with(message, effect, known.book))


def _answer(known: Known, plan: Plan, values: dict[str, str]) -> tuple[Reader, WhichSize | None]:
    """The question as it was read, and its answer where there is one."""
    reader, asked = read_asked(values, known.book, plan)
    if asked is None or plan.gauge is None:
        return reader, None
    try:
        return reader, ask_size(known.book, plan, asked)
    except Refusal as refusal:
        reader.refuse(refusal.field, refusal.message)
        return reader, None


def _intended(session: Session, plan_id: str) -> Plan:
    """The plan at an address, while its size can still be chosen."""
    plan = plan_or_missing(session, plan_id)
    if plan.state != "intended":
        raise NotNow(SETTLED.format(plan.name), f"/garments/{plan_id}")
    return plan
