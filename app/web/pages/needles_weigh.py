"""The form that weighs a ball: everything in it is chosen before she types the number."""

from collections.abc import Mapping
from dataclasses import dataclass

from app.book.book import Book
from app.book.event import Balance
from app.planning.knitting.balls import in_order
from app.planning.knitting.doubt import Doubt
from app.planning.knitting.forecast import PieceDone
from app.web.forms.filled import Filled
from app.web.forms.needles import STEPS, Piece, as_choice, usual_step
from app.web.pages.sequence import noun_of
from app.web.shown import Shown


@dataclass(frozen=True, slots=True)
class WeighForm:
    """The form as it is to be shown, with what may be chosen: balls and pieces, rows done of each
    piece, steps of a scale."""

    form: Filled
    balls: Mapping[str, str]
    places: Mapping[str, str]
    rows_of: Mapping[str, int]
    steps: Mapping[str, str]
    mass_unit: str


def weigh_form(book: Book, pieces: tuple[PieceDone, ...], plan_id: str, form: Filled) -> WeighForm:
    """The form of a garment with these pieces."""
    return WeighForm(
        form=form,
        balls=_ball_options(book, plan_id),
        places={as_choice(piece_key(one)): _place(one, book) for one in pieces},
        rows_of={as_choice(piece_key(one)): one.place.rows for one in pieces},
        steps=STEPS,
        mass_unit=book.settings.mass_unit,
    )


def weighing_values(
    book: Book, pieces: tuple[PieceDone, ...], plan_id: str, id: str, at: Piece | None = None
) -> dict[str, str]:
    """What the form of a weighing holds when it is opened: the piece she is at, its ball, and the
    scale of the last weighing. `id` is that of this weighing, `at` the piece if it is known."""
    at_hand = (one for one in pieces if piece_key(one) == at)
    here = next(at_hand, None) or now_at(pieces)
    last = next(reversed(in_order(book, plan_id)), None)
    return {
        "id": id,
        "weight": "",
        "holding_id": _ball_now(book, plan_id, here),
        "place": as_choice(piece_key(here)) if here else "",
        "rows": "",
        "scale": usual_step(book.settings, last.scale_mg if last else None),
    }


def now_at(pieces: tuple[PieceDone, ...]) -> PieceDone | None:
    """The piece on the needles: the first that is begun and not done, else the first not done."""
    unfinished = [one for one in pieces if not one.place.whole] or list(pieces)
    begun = (one for one in unfinished if one.place.rows)
    return next(begun, next(iter(unfinished), None))


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
    left = [one for one in balls_of(book, plan_id) if held_of(book, one).mg > 0]
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
        and held_of(book, one.id).mg > 0
        and one.put_away is None
    ]
    told = {one: book.holding[one].code for one in mine}
    return told | {one: f"{book.holding[one].code} (not promised here)" for one in others}


def _place(one: PieceDone, book: Book) -> str:
    return f"{piece_name(one)}, {piece_noun(one, book)} {one.place.rows} of {one.place.of}"


def held_of(book: Book, holding_id: str) -> Balance:
    """What the book has of a ball."""
    return book.balances.get(holding_id, Balance())


def piece_name(one: PieceDone) -> str:
    """A piece as it is called."""
    at = one.place
    return f"{at.part}, {at.piece} of {at.pieces}" if at.pieces > 1 else at.part


def piece_noun(one: PieceDone, book: Book) -> str:
    """What is counted in a piece: rows or rounds."""
    return noun_of(book.part[one.place.part_id])


def piece_key(one: PieceDone) -> Piece:
    """Its part and its number."""
    return one.place.part_id, one.place.piece
