"""Weigh the wool of a fleece, all of it or a part, and write down how far it has come."""

from dataclasses import dataclass, replace
from datetime import date

from sqlmodel import Session

from app.book import woolbook
from app.book.book import Book
from app.book.event import Event, Line
from app.book.event_note import noted, step_note, with_reason
from app.book.holding import Holding
from app.book.ids import new_id
from app.book.reading import Reading
from app.book.weighed_as import weighed_as
from app.book.woolbook import WEIGHING, Entry, Portion
from app.book.words import Step, WoolState
from app.store.records import load_book, post, put
from app.store.skein_find import balance_of, readings_of
from app.work.fleece_name import code_as, next_code
from app.work.fleece_step import is_step, step_between
from app.work.skein_readings import Weight, mass_reading


@dataclass(frozen=True, slots=True)
class Weighing:
    """What was weighed: `weight` of wool now in `state`; `taken_mg` of what the book had went into
    it, None where it was all of it.

    `before` is what all of it weighed when the work began; `step` is work that leaves the state as
    it was, such as picking, done in so many `passes`; `waste_mg` is waste that was weighed as well;
    `reason` why the book is put right; `colour` and its name what dyeing made of it.
    """

    weight: Weight
    state: WoolState
    day: date
    taken_mg: int | None = None
    before: Weight | None = None
    step: Step = ""
    passes: int = 0
    waste_mg: int | None = None
    reason: str = ""
    colour: str = ""
    colour_name: str = ""


@dataclass(frozen=True, slots=True)
class Weighed:
    """The event of a weighing, if the book moved, and mg gained (positive) or gone."""

    event: Event | None
    gained_mg: int


def weigh_fleece(session: Session, wool: Holding, weighing: Weighing) -> Weighed:
    """Keep a weighing, and what it says of the wool.

    A step sends what it took to waste. Any other weighing that disagrees with the book is
    put right by weighing and moisture. One that was damp moves no gram: until the wool is dry the
    book has what it had before. A part that was taken becomes a holding of its own. A change of
    state leaves an event even of no grams, so that it can be undone.
    """
    if weighing.before:
        _as_begun(session, wool, weighing, weighing.before)
    book = load_book(session)
    made = wool if weighing.taken_mg is None else _part_of(session, book, wool, weighing)
    now = replace(
        made,
        code=code_as(session, book, made, weighing.state) if made is wool else made.code,
        state=weighing.state,
        colour=weighing.colour or made.colour,
        colour_name=weighing.colour_name or made.colour_name,
    )
    reading = mass_reading(made.id, weighing.weight, weighing.day)
    entry = _entry(session, book, wool, now, reading, weighing)
    put(session, now)
    put(session, reading)
    if entry is None:
        return Weighed(None, 0)
    before = wool.state or weighing.state
    note = "" if before == weighing.state else step_note(before, weighing.state)
    note = with_reason(note, weighing.reason if entry.kind == "correct" else "")
    lines = entry.lines or (Line(now.id, 0),)
    step = weighing.step or step_between(before, weighing.state)
    note = noted(note, [reading])
    event = post(session, entry.kind, weighing.day, lines, note, step=step, passes=weighing.passes)
    return Weighed(event, sum(line.mg for line in lines if line.holding_id in (wool.id, now.id)))


def _as_begun(session: Session, wool: Holding, weighing: Weighing, before: Weight) -> None:
    """Put the book right by what the wool weighed before the work was begun."""
    reading = mass_reading(wool.id, before, weighing.day)
    held = {wool.id: balance_of(session, wool.id)}
    entry = woolbook.correct(held, wool, reading, readings_of(session, wool.id))
    put(session, reading)
    if entry is not None:
        note = noted(weighing.reason, [reading])
        post(session, entry.kind, weighing.day, entry.lines, note)


def _part_of(session: Session, book: Book, wool: Holding, weighing: Weighing) -> Holding:
    fleece = book.fleece.get(wool.fleece_id or "")
    name = fleece.name if fleece else wool.code
    return replace(
        wool,
        id=new_id(),
        kind="fibre",
        code=next_code(session, f"{name}, {weighing.state}"),
        day=weighing.day,
        price="",
        notes="",
    )


def _entry(
    session: Session,
    book: Book,
    wool: Holding,
    now: Holding,
    reading: Reading,
    weighing: Weighing,
) -> Entry | None:
    balance = balance_of(session, wool.id)
    taken = Portion(wool, balance.mg if weighing.taken_mg is None else weighing.taken_mg)
    before = weighed_as(book, wool) or weighing.state
    held = {wool.id: balance}
    if wool.state == now.state and not weighing.step:
        return woolbook.correct(held, now, reading, readings_of(session, wool.id))
    if reading.wool == "damp":
        return woolbook.prepare(held, taken, Portion(now, taken.mg))
    if weighing.step or is_step(before, weighing.state):
        made = Portion(now, reading.value)
        return woolbook.prepare(held, taken, made, weighing.waste_mg)
    return _put_right(taken, Portion(now, reading.value))


def _put_right(taken: Portion, made: Portion) -> Entry:
    """The wool goes on with what it weighs; the difference is weighing and moisture."""
    moved = {taken.holding.id: -taken.mg}
    moved[made.holding.id] = moved.get(made.holding.id, 0) + made.mg
    moved[WEIGHING] = taken.mg - made.mg
    return Entry("correct", tuple(Line(one, mg) for one, mg in moved.items()))
