"""Dye a skein: its colour changes, and its weight where that was taken."""

from dataclasses import dataclass, replace
from datetime import date

from sqlmodel import Session

from app.book import woolbook
from app.book.event import Event, Line
from app.book.event_note import noted
from app.book.holding import Holding
from app.book.woolbook import Portion
from app.store.records import post, put
from app.store.skein_find import balance_of
from app.work.skein_readings import Weight, mass_reading


@dataclass(frozen=True, slots=True)
class Dyeing:
    """How a skein looks afterwards, and its weight, dry again, where that was taken."""

    colour: str
    colour_name: str
    day: date
    weight: Weight | None = None
    dye_lot: str = ""


def dye_skein(session: Session, skein: Holding, dyeing: Dyeing) -> Event:
    """Dye a skein; an event stands in the book even where no gram was moved."""
    held = balance_of(session, skein.id)
    reading = mass_reading(skein.id, dyeing.weight, dyeing.day) if dyeing.weight else None
    after_mg = dyeing.weight.mg if dyeing.weight else held.mg
    taken, made = Portion(skein, held.mg, held.mm), Portion(skein, after_mg, held.mm)
    entry = woolbook.prepare({skein.id: held}, taken, made)
    put(
        session,
        replace(
            skein,
            colour=dyeing.colour,
            colour_name=dyeing.colour_name,
            colours=(),
            dye_lot=dyeing.dye_lot or skein.dye_lot,
        ),
    )
    if reading:
        put(session, reading)
    lines = entry.lines or (Line(skein.id, 0),)
    note = noted(dyeing.colour_name, [reading] if reading else [])
    return post(session, entry.kind, dyeing.day, lines, note, step="dye")
