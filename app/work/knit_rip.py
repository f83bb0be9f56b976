"""Undo knitting back to a row: its yarn is wound up again, a holding of its own, to be washed."""

from dataclasses import dataclass
from datetime import date

from sqlmodel import Session

from app.book.book import Book
from app.book.event import Balance
from app.book.holding import Holding
from app.book.ids import new_id
from app.book.plan import Promise
from app.book.woolbook import Portion, rip
from app.planning.knitting.doubt import courses_of
from app.planning.knitting.ripped import Ripped, ripped
from app.store.records import load_book, post, put
from app.work.knit_tick import keep_progress
from app.work.promise_use import free_code, garment_of


@dataclass(frozen=True, slots=True)
class RipBack:
    """A piece is undone down to `rows`; `mg` is what the yarn weighed, None where it was not
    weighed: then what the rows were planned to take, as far as the garment holds it."""

    part_id: str
    piece: int
    rows: int
    mg: int | None
    day: date


def rip_back(session: Session, plan_id: str, back: RipBack) -> tuple[Holding, ...]:
    """Wind the yarn up, promise it to the same part again, and note the rows; HoldsTooLittle
    where more comes out than was knit."""
    book = load_book(session)
    plan = book.plan[plan_id]
    garment = garment_of(session, book, plan)
    held = load_book(session).balances.get(garment.id, Balance())
    came = ripped(book, courses_of(book, plan_id), back.part_id, back.piece, back.rows)
    whole = sum(one.mg for one in came)
    if back.mg is None and whole > held.mg:
        came = tuple(one.of(held.mg / whole) for one in came)
    elif back.mg is not None and whole:
        came = tuple(one.of(back.mg / whole) for one in came)
    came = tuple(one for one in came if one.mg > 0)
    made = tuple(_wound(session, book, plan_id, one, back.day) for one in came)
    if made:
        out = Portion(garment, sum(one.mg for one in made))
        entry = rip({garment.id: held}, out, made)
        post(session, entry.kind, back.day, entry.lines, note=f"back to row {back.rows}")
    for portion, one in zip(made, came, strict=True):
        _promise(session, plan_id, back.part_id, portion, one.role)
    keep_progress(session, book, plan_id, back.part_id, back.piece, back.rows, back.day)
    return tuple(one.holding for one in made)


def _wound(session: Session, book: Book, plan_id: str, came: Ripped, day: date) -> Portion:
    taken = {one.code for one in load_book(session).holdings}
    holding = Holding(
        id=new_id(),
        kind="left-over",
        code=free_code(taken, f"{book.plan[plan_id].name}, ripped back"),
        yarn_id=came.yarn_id,
        plan_id=plan_id,
        day=day,
        colour=came.colour,
        notes="Ripped back: wash it and hang it to dry before you knit with it.",
    )
    put(session, holding)
    return Portion(holding, came.mg, came.mm)


def _promise(session: Session, plan_id: str, part_id: str, portion: Portion, role: str) -> None:
    if portion.mm > 0:
        promise = Promise(
            new_id(), plan_id, part_id, portion.holding.id, portion.mm, role, state="settled"
        )
        put(session, promise)
