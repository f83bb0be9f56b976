"""A garment comes off the needles: what is left is weighed, and what it took is kept."""

from dataclasses import dataclass, replace
from datetime import date

from sqlmodel import Session

from app.book.event import Balance, Line
from app.book.holding import Holding
from app.book.ids import new_id
from app.book.knitting import Took
from app.book.person import Measure
from app.book.plan import Plan
from app.book.woolbook import WEIGHING, Portion, mg_of, mm_of, use, wind
from app.planning.knitting.took import took
from app.planning.supply import stock
from app.planning.yarns import Lots
from app.store.records import get, load_book, post, put, remove
from app.work.promise_use import free_code, garment_of, use_promised


@dataclass(frozen=True, slots=True)
class Left:
    """What is left of a ball, in mg."""

    holding_id: str
    mg: int


@dataclass(frozen=True, slots=True)
class Finished:
    """What is known of a garment off the needles. Balls that were not weighed stay as the wool book
    has them, or with `all_used` what is promised of them went in; `mending_mm` of yarn are put
    with the garment; `minutes` it took in all."""

    day: date
    all_used: bool = False
    left: tuple[Left, ...] = ()
    garment_mg: int | None = None
    mending_mm: int = 0
    mending_of: str | None = None
    minutes: int | None = None
    measured: tuple[Measure, ...] = ()
    notes: str = ""


def finish_knitting(session: Session, plan: Plan, told: Finished) -> Plan:
    """The plan is finished: left-overs are free again, and what its parts took is learned from.
    MakesTooMuch where more is left of a ball than it had."""
    if told.all_used:
        _use_promised(session, plan.id, {one.holding_id for one in told.left}, told.day)
    garment = garment_of(session, load_book(session), plan)
    for one in told.left:
        _knit_down(session, garment, one, told.day)
    if told.mending_of and told.mending_mm:
        _for_mending(session, plan, told)
    if told.garment_mg is not None:
        _weigh_garment(session, garment, told.garment_mg, told.day)
    book = load_book(session)
    parts = _with_minutes(took(book, plan.id), told.minutes)
    for promise in book.promises_of.get(plan.id, []):
        remove(session, promise)
    done = replace(
        plan,
        state="finished",
        finished_on=told.day,
        took=parts,
        measured=told.measured,
        notes="\n".join(filter(None, (plan.notes, told.notes))),
    )
    put(session, done)
    return done


def _use_promised(session: Session, plan_id: str, weighed: set[str], day: date) -> None:
    """Knit in all that is promised of balls nobody weighed, as far as they still hold it."""
    for promise in load_book(session).promises_of.get(plan_id, []):
        there = promise.holding_id in stock(Lots(load_book(session)))
        if there and promise.holding_id not in weighed:
            use_promised(session, promise, promise.mm, day)


def _with_minutes(parts: tuple[Took, ...], minutes: int | None) -> tuple[Took, ...]:
    """Minutes shared out among the parts by the yarn they took."""
    whole = sum(one.mg or 0 for one in parts)
    if not minutes or not whole:
        return parts
    return tuple(replace(one, minutes=round(minutes * (one.mg or 0) / whole)) for one in parts)


def _knit_down(session: Session, garment: Holding, left: Left, day: date) -> None:
    book = load_book(session)
    held = book.balances.get(left.holding_id, Balance())
    gone = held.mg - left.mg
    if gone > 0:
        taken = Portion(book.holding[left.holding_id], gone, mm_of(held, gone))
        entry = use(book.balances, (taken,), garment)
        post(session, entry.kind, day, entry.lines)
    elif gone < 0:
        lines = (Line(left.holding_id, -gone), Line(WEIGHING, gone))
        post(session, "correct", day, lines, note="weighed when the garment was finished")


def _for_mending(session: Session, plan: Plan, told: Finished) -> None:
    book = load_book(session)
    ball = book.holding[told.mending_of or ""]
    held = book.balances.get(ball.id, Balance())
    mm = min(told.mending_mm, held.mm)
    if mm <= 0:
        return
    code = free_code({one.code for one in book.holdings}, f"{plan.name}, for mending")
    kept = Holding(
        id=new_id(),
        kind="left-over",
        code=code,
        yarn_id=ball.yarn_id,
        plan_id=plan.id,
        day=told.day,
        colour=ball.colour,
        place="with the garment",
        put_away=told.day,
    )
    put(session, kept)
    part = Portion(kept, mg_of(held, mm), mm)
    rest = Portion(ball, held.mg - part.mg, held.mm - mm)
    entry = wind(book.balances, Portion(ball, held.mg, held.mm), (part, rest))
    post(session, entry.kind, told.day, entry.lines, note="kept for mending")


def _weigh_garment(session: Session, garment: Holding, mg: int, day: date) -> None:
    """A garment that weighs other than the book says has taken up moisture, or lost some."""
    held = load_book(session).balances.get(garment.id, Balance())
    if get(session, Holding, garment.id) and mg != held.mg:
        lines = (Line(garment.id, mg - held.mg), Line(WEIGHING, held.mg - mg))
        post(session, "correct", day, lines, note="the garment weighed")
