"""A garment on the needles: where she is, what its balls weigh, and what is ahead."""

from dataclasses import dataclass
from datetime import date

from app.book.book import Book
from app.book.plan import Plan
from app.craft.shaping import counted
from app.planning.knitting.balls import in_order
from app.planning.knitting.forecast import Forecast, PieceDone
from app.web.forms.filled import Filled
from app.web.pages.answer import Sentence, answer_sentence, listed, yarn_name
from app.web.pages.forecast import Ahead, ahead_page
from app.web.pages.needles_weigh import (
    WeighForm,
    balls_of,
    held_of,
    piece_name,
    piece_noun,
    weigh_form,
)
from app.web.shown import Shown
from app.work.reckoning import Known
from app.work.undo_records import Change


@dataclass(frozen=True, slots=True)
class PieceLine:
    """A piece of a part with its strip: rows done, of how many, called rows or rounds."""

    name: str
    url: str
    rows: int
    of: int
    noun: str

    @property
    def said(self) -> str:
        """What is done of it."""
        if self.rows >= self.of:
            return f"all {counted(self.of, self.noun)} done"
        return f"{self.rows} of {counted(self.of, self.noun)} done"


@dataclass(frozen=True, slots=True)
class BallLine:
    """A ball of the garment: what is left of it by the book, and what it was weighed last."""

    code: str
    url: str
    yarn: str
    colour: str
    now: str
    weighed: str


@dataclass(frozen=True, slots=True)
class NeedlesPage:
    """`where` says how far she is; `weigh` weighs a ball, with a `question` to be answered where
    the scale says something odd."""

    plan: Plan
    where: str
    answer: Sentence
    pieces: tuple[PieceLine, ...]
    balls: tuple[BallLine, ...]
    weigh: WeighForm
    question: str
    ahead: Ahead | None
    last: Change | None


def needles_page(
    known: Known,
    shown: Shown,
    plan_id: str,
    form: Filled,
    today: date,
    question: str = "",
    asked: Filled | None = None,
    last: Change | None = None,
) -> NeedlesPage:
    """The page of a plan that is being knit; `form` is the weighing as it is to be shown."""
    book, plan = known.book, known.book.plan[plan_id]
    told = known.reckoning.plan(plan_id)
    pieces = Forecast(book, told).pieces
    return NeedlesPage(
        plan=plan,
        where=where_said(pieces, book),
        answer=answer_sentence(told, book, shown),
        pieces=piece_lines(pieces, book, plan_id),
        balls=tuple(_ball(one, book, plan_id, shown) for one in balls_of(book, plan_id)),
        weigh=weigh_form(book, pieces, plan_id, form),
        question=question,
        ahead=ahead_page(known, shown, plan_id, today, asked),
        last=last,
    )


def piece_lines(pieces: tuple[PieceDone, ...], book: Book, plan_id: str) -> tuple[PieceLine, ...]:
    """The pieces of a plan, with the way to the strip of each."""
    return tuple(_piece(one, book, plan_id) for one in pieces)


def where_said(pieces: tuple[PieceDone, ...], book: Book) -> str:
    """How far the garment is, in a sentence."""
    if not any(one.place.rows for one in pieces):
        return "Cast on; no row is ticked off yet."
    done = [piece_name(one).lower() for one in pieces if one.place.whole]
    begun = [
        f"{piece_name(one).lower()} at {piece_noun(one, book)} {one.place.rows} of {one.place.of}"
        for one in pieces
        if one.place.rows and not one.place.whole
    ]
    rest = sum(1 for one in pieces if not one.place.rows)
    told = listed([*begun, *([f"{listed(done)} done"] if done else [])])
    later = f"; {counted(rest, 'piece')} not begun" if rest else ""
    return f"{told[0].upper()}{told[1:]}{later}."


def _ball(holding_id: str, book: Book, plan_id: str, shown: Shown) -> BallLine:
    holding, held = book.holding[holding_id], held_of(book, holding_id)
    yarn = book.yarn.get(holding.yarn_id or "")
    last = [one for one in in_order(book, plan_id) if one.holding_id == holding_id][-1:]
    weighed = [
        f"{shown.mass(one.mg / 1000)} at row {one.rows} of {book.part[one.part_id].name}, "
        f"{shown.day(one.day)}"
        for one in last
    ]
    return BallLine(
        holding.code,
        f"/skeins/{holding_id}",
        yarn_name(holding.yarn_id, book),
        holding.colour or (yarn.colour if yarn else ""),
        shown.mass(held.mg / 1000),
        "".join(weighed),
    )


def _piece(one: PieceDone, book: Book, plan_id: str) -> PieceLine:
    at = one.place
    url = f"/garments/{plan_id}/needles/{at.part_id}/{at.piece}"
    return PieceLine(piece_name(one), url, at.rows, at.of, piece_noun(one, book))
