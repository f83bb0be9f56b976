"""A garment on the needles: where she is, what its balls weigh, and what is ahead."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from app.book.book import Book
from app.book.event import Balance
from app.book.plan import Plan
from app.craft.shaping import counted
from app.planning.knitting.balls import in_order
from app.planning.knitting.doubt import Doubt
from app.planning.knitting.forecast import Forecast, PieceDone
from app.web.forms.filled import Filled
from app.web.forms.needles import STEPS, Piece, as_choice, usual_step
from app.web.pages.answer import Sentence, answer_sentence, listed, yarn_name
from app.web.pages.forecast import Ahead, ahead_page
from app.web.pages.sequence import noun_of
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
    """`where` says how far she is; `form` weighs a ball, with a `question` to be answered where
    the scale says something odd."""

    plan: Plan
    where: str
    answer: Sentence
    pieces: tuple[PieceLine, ...]
    balls: tuple[BallLine, ...]
    form: Filled
    ball_options: Mapping[str, str]
    place_options: Mapping[str, str]
    rows_of: Mapping[str, int]
    step_options: Mapping[str, str]
    question: str
    mass_unit: str
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
        form=form,
        ball_options=_ball_options(book, plan_id),
        place_options={as_choice(_key(one)): _place(one, book) for one in pieces},
        rows_of={as_choice(_key(one)): one.place.rows for one in pieces},
        step_options=STEPS,
        question=question,
        mass_unit=book.settings.mass_unit,
        ahead=ahead_page(known, shown, plan_id, today, asked),
        last=last,
    )


def piece_lines(pieces: tuple[PieceDone, ...], book: Book, plan_id: str) -> tuple[PieceLine, ...]:
    """The pieces of a plan, with the way to the strip of each."""
    return tuple(_piece(one, book, plan_id) for one in pieces)


def weighing_values(
    book: Book, pieces: tuple[PieceDone, ...], plan_id: str, id: str
) -> dict[str, str]:
    """What the form of a weighing holds when it is opened: the piece she is at, its ball, and the
    scale of the last weighing. `id` is that of this weighing."""
    here = now_at(pieces)
    last = next(reversed(in_order(book, plan_id)), None)
    return {
        "id": id,
        "weight": "",
        "holding_id": _ball_now(book, plan_id, here),
        "place": as_choice(_key(here)) if here else "",
        "rows": "",
        "scale": usual_step(book.settings, last.scale_mg if last else None),
    }


def now_at(pieces: tuple[PieceDone, ...]) -> PieceDone | None:
    """The piece on the needles: the first that is begun and not done, else the first not done."""
    unfinished = [one for one in pieces if not one.place.whole] or list(pieces)
    begun = (one for one in unfinished if one.place.rows)
    return next(begun, next(iter(unfinished), None))


def where_said(pieces: tuple[PieceDone, ...], book: Book) -> str:
    """How far the garment is, in a sentence."""
    if not any(one.place.rows for one in pieces):
        return "Cast on; no row is ticked off yet."
    done = [_name(one).lower() for one in pieces if one.place.whole]
    begun = [
        f"{_name(one).lower()} at {_noun(one, book)} {one.place.rows} of {one.place.of}"
        for one in pieces
        if one.place.rows and not one.place.whole
    ]
    rest = sum(1 for one in pieces if not one.place.rows)
    told = listed([*begun, *([f"{listed(done)} done"] if done else [])])
    later = f"; {counted(rest, 'piece')} not begun" if rest else ""
    return f"{told[0].upper()}{told[1:]}{later}."


def doubt_said(doubt: Doubt, code: str, rows: int, shown: Shown, typed: str) -> str:
    """What is odd about a weighing, as a question."""
    expected = shown.mass(doubt.expected_g)
    match doubt.what:
        case "heavier":
            return (
                f"{code} had {expected} left, and {typed} is more. Is it this ball? A weighing "
                "from earlier in the work, or a ball that took up moisture, may well be right."
            )
        case "wrong":
            return f"{code} is not promised to this garment. Is it really knit from it?"
        case _:
            return (
                f"At row {rows} {code} was expected to weigh about {expected}; {typed} is far from "
                "that. Are the ball, the row and the number right?"
            )


def balls_of(book: Book, plan_id: str) -> list[str]:
    """The balls of a garment, in the order they are knit: those promised, then those weighed."""
    order = {one.id: place for place, one in enumerate(book.parts_of.get(plan_id, []))}
    promises = book.promises_of.get(plan_id, [])
    promised = sorted(promises, key=lambda one: (order.get(one.part_id, 0), one.position))
    weighed = [one.holding_id for one in in_order(book, plan_id)]
    return [*dict.fromkeys([*(one.holding_id for one in promised), *weighed])]


def _ball_now(book: Book, plan_id: str, here: PieceDone | None) -> str:
    """The ball she is knitting from: that weighed last, while something is left of it; else the
    first that is promised to the piece she is at."""
    left = [one for one in balls_of(book, plan_id) if _held(book, one).mg > 0]
    weighed = [one.holding_id for one in in_order(book, plan_id)][-1:]
    here_id = here.place.part_id if here else ""
    mine = [one.holding_id for one in book.promises_of.get(plan_id, []) if one.part_id == here_id]
    likely = [one for one in (*weighed, *(one for one in left if one in mine)) if one in left]
    return next(iter(likely or left), "")


def _ball_options(book: Book, plan_id: str) -> dict[str, str]:
    """The balls of the garment first, then others of the same yarns."""
    mine = balls_of(book, plan_id)
    yarns = {book.holding[one].yarn_id for one in mine}
    others = [
        one.id
        for one in book.holdings
        if one.kind in ("skein", "ball", "left-over")
        and one.yarn_id in yarns
        and one.id not in mine
        and _held(book, one.id).mg > 0
        and one.put_away is None
    ]
    told = {one: book.holding[one].code for one in mine}
    return told | {one: f"{book.holding[one].code} (not promised here)" for one in others}


def _ball(holding_id: str, book: Book, plan_id: str, shown: Shown) -> BallLine:
    holding, held = book.holding[holding_id], _held(book, holding_id)
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


def _held(book: Book, holding_id: str) -> Balance:
    return book.balances.get(holding_id, Balance())


def _piece(one: PieceDone, book: Book, plan_id: str) -> PieceLine:
    at = one.place
    url = f"/garments/{plan_id}/needles/{at.part_id}/{at.piece}"
    return PieceLine(_name(one), url, at.rows, at.of, _noun(one, book))


def _place(one: PieceDone, book: Book) -> str:
    return f"{_name(one)}, {_noun(one, book)} {one.place.rows} of {one.place.of}"


def _name(one: PieceDone) -> str:
    at = one.place
    return f"{at.part}, {at.piece} of {at.pieces}" if at.pieces > 1 else at.part


def _noun(one: PieceDone, book: Book) -> str:
    return noun_of(book.part[one.place.part_id])


def _key(one: PieceDone) -> Piece:
    return one.place.part_id, one.place.piece
