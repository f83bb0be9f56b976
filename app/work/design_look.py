"""What a garment planned from measurements would be, before it is saved."""

from dataclasses import dataclass

from app.book.book import Book
from app.craft.constructions.drawing import Drawing
from app.craft.constructions.wanting import Taken
from app.planning import reckon
from app.planning.answers import PlanAnswer, Reckoning
from app.planning.changes import Effect, effect
from app.planning.design import drawing_of, taken_for
from app.planning.picture import Picture, picture
from app.planning.plan_sheet import PlanSheet, plan_sheet
from app.planning.redraw import Redrawn
from app.work.reckoning import Known


@dataclass(frozen=True, slots=True)
class Look:
    """The garment as it would be: its `book`, drawing, picture, work in words and answer; what was
    `taken` for it; what becomes of its parts; and for a plan that is there, what that changes."""

    book: Book
    redrawn: Redrawn
    taken: Taken
    drawing: Drawing
    picture: Picture
    sheet: PlanSheet
    answer: PlanAnswer
    effect: Effect | None


def look(known: Known, redrawn: Redrawn) -> Look:
    """A plan that was drawn anew, as it would be."""
    plan = redrawn.plan
    assert plan.design is not None
    assert plan.gauge is not None
    book = redrawn.in_book(known.book)
    reckoning = reckon(book)
    return Look(
        book=book,
        redrawn=redrawn,
        taken=taken_for(plan.design, plan.gauge),
        drawing=drawing_of(plan.design, plan.gauge),
        picture=picture(book, reckoning, plan.id),
        sheet=plan_sheet(book, plan),
        answer=reckoning.plan(plan.id),
        effect=_effect(known, book, plan.id, reckoning),
    )


def _effect(known: Known, book: Book, plan_id: str, reckoning: Reckoning) -> Effect | None:
    if plan_id not in {one.plan_id for one in known.reckoning.plans}:
        return None
    return effect(known.book, known.reckoning, book, reckoning, plan_id)
