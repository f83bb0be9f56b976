"""What the routes of a garment on the needles have in common."""

from datetime import date

from fastapi import Request, Response
from sqlmodel import Session

from app.book.ids import new_id
from app.book.plan import Plan
from app.planning.knitting.forecast import Forecast
from app.web.errors import Missing
from app.web.forms.filled import Filled
from app.web.garment_shown import plan_or_missing
from app.web.pages.needles import needles_page
from app.web.pages.needles_weigh import weighing_values
from app.web.templating import render, shown_in
from app.work.reckoning import current
from app.work.undo_records import last_change

PAGE = "pages/needles/needles.html"


def on_needles(session: Session, plan_id: str) -> Plan:
    """The plan, which is being knit; Missing where there is none, or it is off the needles."""
    plan = plan_or_missing(session, plan_id)
    if plan.state != "being knit":
        raise Missing(f"{plan.name}, as it is not on the needles,")
    return plan


def show_needles(
    request: Request,
    session: Session,
    plan_id: str,
    form: Filled | None = None,
    question: str = "",
) -> Response:
    """The page of a garment on the needles, with a weighing as it was typed; 422 where that is at
    fault or asked about."""
    known, today = current(session), date.today()
    book, shown = known.book, shown_in(known.book.settings)
    if form is None:
        pieces = Forecast(book, known.reckoning.plan(plan_id)).pieces
        form = Filled(weighing_values(book, pieces, plan_id, new_id()))
    last = last_change(session, book, lambda one: one.about(plan_id))
    asked = None
    if "hours" in request.query_params:
        asked = Filled({"hours": request.query_params["hours"]})
    page = needles_page(known, shown, plan_id, form, today, question, asked, last)
    refused = bool(form.errors or question)
    return render(request, PAGE, page, status=422 if refused else 200)


def wants_json(request: Request) -> bool:
    """True for the script of a device, which takes no page for an answer."""
    return "application/json" in request.headers.get("accept", "")
