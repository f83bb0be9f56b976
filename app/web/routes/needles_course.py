"""Another size, needle or yarn from here on, for a part on the needles."""

from collections.abc import Mapping
from dataclasses import dataclass

from fastapi import APIRouter, Request, Response
from sqlmodel import Session

from app.book.plan import Part, Plan
from app.book.stamp import stamp
from app.planning.knitting.done import rows_done
from app.web.errors import Stale
from app.web.forms.filled import Filled
from app.web.forms.gauge import MEASURES, WASHED
from app.web.forms.needles_otherwise import otherwise_values, read_otherwise
from app.web.forms.options import names_by_id, with_none
from app.web.forms.reader import Posted
from app.web.garment_shown import part_or_missing, said_with, wanting_plan
from app.web.pages.sequence import noun_of
from app.web.session import ReadingSession, WritingSession
from app.web.templating import after_save, render
from app.work.knit_course import CannotTurn, knit_otherwise
from app.work.plan_effect import save_and_tell
from app.work.reckoning import current
from app.work.undo_records import remember

router = APIRouter(prefix="/garments/{plan_id}/needles/{part_id}/{piece}/otherwise")

PAGE = "pages/needles/otherwise.html"


@dataclass(frozen=True, slots=True)
class OtherwisePage:
    """The form; `done` rows of the piece are knit."""

    plan: Plan
    part: Part
    piece: int
    noun: str
    done: int
    form: Filled
    yarns: Mapping[str, str]
    measures: Mapping[str, str]
    washed: Mapping[str, str]


@router.get("")
def ask(
    request: Request, session: ReadingSession, plan_id: str, part_id: str, piece: int
) -> Response:
    wanting_plan(session, plan_id)
    part, book = part_or_missing(session, plan_id, part_id), current(session).book
    form = Filled(otherwise_values(book.settings), {}, stamp(part))
    return _page(request, session, part, piece, form)


@router.post("")
def change(
    request: Request,
    session: WritingSession,
    posted: Posted,
    plan_id: str,
    part_id: str,
    piece: int,
) -> Response:
    wanting_plan(session, plan_id)
    part, book = part_or_missing(session, plan_id, part_id), current(session).book
    reader, how = read_otherwise(posted, book.settings, names_by_id(book.yarns))
    if reader.stamp != stamp(part):
        raise Stale(part.name, f"/garments/{plan_id}/needles")
    if reader.ok:
        try:
            rest, does = save_and_tell(
                session, plan_id, lambda: knit_otherwise(session, plan_id, part_id, how)
            )
        except CannotTurn as why:
            reader.refuse("rows", str(why))
        else:
            told = f"{rest.name} is a part of its own now; what is knit stays as it is."
            message = said_with(told, does, book)
            undo = remember(session, book, message)
            return after_save(
                request, f"/garments/{plan_id}/needles/{rest.id}/{piece}", message, undo
            )
    return _page(request, session, part, piece, reader.filled())


def _page(request: Request, session: Session, part: Part, piece: int, form: Filled) -> Response:
    book = current(session).book
    page = OtherwisePage(
        plan=book.plan[part.plan_id],
        part=part,
        piece=piece,
        noun=noun_of(part),
        done=rows_done(book, part.plan_id).get((part.id, piece), 0),
        form=form,
        yarns=with_none("as it is now", names_by_id(book.yarns)),
        measures=MEASURES,
        washed=WASHED,
    )
    return render(request, PAGE, page, status=422 if form.errors else 200)
