"""The page of one skein: what it holds and what is free of it, then everything behind that."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from app.book.book import Book
from app.book.event import Event
from app.book.event_note import reason_noted
from app.book.reading import Reading
from app.planning.answers import Held
from app.web.pages.answer import Sentence
from app.web.pages.fleece_history import STEP_WORDS
from app.web.pages.photos import PhotoShown, photos_shown
from app.web.pages.wool_of import WoolOf, wool_of_holding
from app.web.shown import Shown, as_typed
from app.work.photo_find import photos_of
from app.work.reckoning import Known
from app.work.skein_known import KnownSkein

NIL_M = 0.05
"""Metres that are not worth a word."""

HAPPENED = {
    "arrive": "came to the shelf",
    "prepare": "prepared",
    "spin": "spun",
    "wind": "wound",
    "use": "knit",
    "correct": "weighed or measured again",
    "put away": "put away",
    "undo": "undone",
}


@dataclass(frozen=True, slots=True)
class PromisedRow:
    """Yarn of this skein that a garment has, for a part or as its reserve."""

    plan: str
    url: str
    part: str
    m: float


@dataclass(frozen=True, slots=True)
class ReadingRow:
    """A reading as it was typed, what it came to, and its state."""

    day: date
    what: str
    typed: str
    came_to: str
    state: str


@dataclass(frozen=True, slots=True)
class EventRow:
    """What happened, and what the skein gained or gave: g and m, negative when given."""

    day: date
    what: str
    g: float
    m: float


@dataclass(frozen=True, slots=True)
class SkeinPage:
    """`colour` and its words are the skein's own, or else those of its yarn; `damp` where it was
    never weighed dry."""

    answer: Sentence
    colour: str
    colour_name: str
    damp: bool
    known: KnownSkein
    wool: WoolOf | None
    promised: tuple[PromisedRow, ...]
    readings: tuple[ReadingRow, ...]
    events: tuple[EventRow, ...]
    photos: tuple[PhotoShown, ...]


def skein_page(known: Known, one: KnownSkein, shown: Shown) -> SkeinPage:
    return SkeinPage(
        answer=holds_said(one, known.book, shown),
        colour=one.skein.colour or (one.yarn.colour if one.yarn else ""),
        colour_name=one.skein.colour_name or (one.yarn.colour_name if one.yarn else ""),
        damp={each.wool for each in one.readings if each.kind == "mass"} == {"damp"},
        known=one,
        wool=wool_of_holding(known.book, one.skein.id, shown),
        promised=_promised_rows(one, known.book),
        readings=tuple(_reading_row(reading, shown) for reading in reversed(one.readings)),
        events=tuple(_event_row(event, one.skein.id) for event in reversed(one.events)),
        photos=photos_shown(
            photos_of(known.book.photos, "skein", one.skein.id), one.skein.code, shown
        ),
    )


def holds_said(one: KnownSkein, book: Book, shown: Shown) -> Sentence:
    """ "Holds 213 m, 96 g: 222 m/100 g; 63 m free, 150 m promised to Waistcoat." """
    if one.skein.put_away:
        return Sentence("idle", "Put away", f" on {shown.day(one.skein.put_away)}.")
    if one.line is None:
        return Sentence("idle", "Holds nothing any more.")
    length, mass = shown.length(one.line.held.value), shown.mass(one.line.held_g)
    about = "about " if one.unfinished else ""
    lead = f"Holds {about}{length}, {mass}"
    grist = f": {shown.grist(one.tex)}" if one.tex and not one.unfinished else ""
    return Sentence("idle", lead, f"{grist}; {_free_said(one, book, shown)}.")


def _free_said(one: KnownSkein, book: Book, shown: Shown) -> str:
    line = one.line
    if line is None or not line.promised_to:
        return "all of it free"
    promised = _by_plan(held for held in line.promised_to if held.part_id)
    reserved = _by_plan(held for held in line.promised_to if not held.part_id)
    words = [f"{shown.length(m)} promised to {book.plan[id].name}" for id, m in promised.items()]
    for id, m in reserved.items():
        whose = "" if id in promised else f" for {book.plan[id].name}"
        words += [f"{shown.length(m)} in reserve{whose}"] if m > NIL_M else []
    return ", ".join([f"{shown.at_least_length(line.free_m)} free", *words])


def _promised_rows(one: KnownSkein, book: Book) -> tuple[PromisedRow, ...]:
    """A row for each part, then one for each plan's reserve."""
    held = one.line.promised_to if one.line else ()
    parts = [(each.plan_id, book.part[each.part_id].name, each.m) for each in held if each.part_id]
    reserves = _by_plan(each for each in held if not each.part_id)
    rows = parts + [(plan, "in reserve for it", m) for plan, m in reserves.items() if m > NIL_M]
    return tuple(
        PromisedRow(book.plan[plan].name, f"/garments/{plan}", part, m) for plan, part, m in rows
    )


def _by_plan(held: Iterable[Held]) -> dict[str, float]:
    sums: dict[str, float] = {}
    for each in held:
        sums[each.plan_id] = sums.get(each.plan_id, 0.0) + each.m
    return sums


def _reading_row(reading: Reading, shown: Shown) -> ReadingRow:
    if reading.kind == "wraps":
        return ReadingRow(reading.day, "Thickness", as_typed(reading.typed, reading.unit), "", "")
    if reading.kind == "mass":
        typed, came_to = as_typed(reading.typed, reading.unit), shown.mass(reading.value / 1000)
        return ReadingRow(reading.day, "Weight", typed, came_to, reading.wool)
    typed, came_to = _length_typed(reading, shown), shown.length(reading.value / 1000)
    state = "finished" if reading.finished else "before finishing"
    return ReadingRow(reading.day, "Length", typed, came_to, state)


def _length_typed(reading: Reading, shown: Shown) -> str:
    if reading.girth_mm and reading.turns:
        return f"{reading.typed} turns of {shown.girth(reading.girth_mm)}"
    return as_typed(reading.typed, reading.unit)


def _event_row(event: Event, skein_id: str) -> EventRow:
    mine = [line for line in event.lines if line.holding_id == skein_id]
    g, m = sum(line.mg for line in mine) / 1000, sum(line.mm for line in mine) / 1000
    what = STEP_WORDS.get(event.step) or HAPPENED[event.kind]
    reason = reason_noted(event)
    return EventRow(event.day, f"{what}: {reason}" if reason else what, g, m)
