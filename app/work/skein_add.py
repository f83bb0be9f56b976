"""Add a skein: its yarn, its record, its readings, and the event that puts it on the shelf."""

from dataclasses import dataclass
from datetime import date

from sqlmodel import Session

from app.book import woolbook
from app.book.event import Event
from app.book.holding import Holding
from app.book.ids import new_id
from app.book.woolbook import Entry, Portion
from app.book.words import Step
from app.book.yarn import Yarn
from app.store.records import get, post, put
from app.store.skein_find import balance_of, codes_in_use, codes_near
from app.work.refusal import Refusal
from app.work.skein_code import letters_of, proposed, stem_for
from app.work.skein_readings import (
    Length,
    Weight,
    Wraps,
    counting,
    length_reading,
    mass_reading,
    wraps_reading,
)
from app.work.skein_spin import taken_from
from app.work.yarn_save import save_yarn


@dataclass(frozen=True, slots=True)
class NewSkein:
    """What is known of a skein when it comes to the shelf.

    `yarn` may be new; an empty `code` is proposed; `fleece_id` is taken from now where `taken_now`,
    and otherwise only named as the wool it came from. `lengths` holds at least one.
    """

    yarn: Yarn
    weight: Weight
    lengths: tuple[Length, ...]
    day: date
    wraps: Wraps | None = None
    code: str = ""
    fleece_id: str | None = None
    taken_now: bool = True
    colour: str = ""
    colour_name: str = ""
    place: str = ""
    notes: str = ""


@dataclass(frozen=True, slots=True)
class Saved:
    """The holdings that came to the shelf and the event that brought them."""

    holdings: tuple[Holding, ...]
    event: Event


def add_skein(session: Session, new: NewSkein) -> Saved:
    """Add one skein; Refusal for a code in use or a fleece that holds too little."""
    yarn = yarn_kept(session, new.yarn)
    code = free_codes(session, yarn, (new.code,) if new.code else (), 1)[0]
    skein = _holding(new, yarn, code)
    readings = [length_reading(skein.id, one, new.day) for one in new.lengths]
    counts = counting(readings)
    made = Portion(skein, new.weight.mg, counts.value if counts else 0)
    entry = _entry(session, new, made)
    put(session, skein)
    readings.append(mass_reading(skein.id, new.weight, new.day))
    if new.wraps:
        readings.append(wraps_reading(skein.id, new.wraps, new.day))
    for reading in readings:
        put(session, reading)
    step: Step = "spin" if entry.kind == "spin" else ""
    return Saved((skein,), post(session, entry.kind, new.day, entry.lines, step=step))


def yarn_kept(session: Session, yarn: Yarn) -> Yarn:
    """The yarn as it stands in the book, written down first if it is new."""
    return get(session, Yarn, yarn.id) or save_yarn(session, yarn)


def free_codes(session: Session, yarn: Yarn, typed: tuple[str, ...], count: int) -> tuple[str, ...]:
    """`typed`, if none of it is in use, or the next codes of the yarn; Refusal otherwise."""
    if not typed:
        return proposed_codes(session, yarn, count)
    taken = codes_in_use(session, typed)
    if taken:
        raise Refusal(
            "code", f"{taken[0]} is already in use. Choose another code, or leave it empty."
        )
    return typed


def proposed_codes(session: Session, yarn: Yarn, count: int = 1) -> tuple[str, ...]:
    """The next codes of a yarn that no holding has."""
    tags = codes_near(session, yarn.id, letters_of(yarn.name)[0])
    own = [one.code for one in tags if one.yarn_id == yarn.id]
    others = [one.code for one in tags if one.yarn_id != yarn.id]
    stem = stem_for(yarn.name, own, others)
    return proposed(stem, [one.code for one in codes_near(session, yarn.id, stem)], count)


def _holding(new: NewSkein, yarn: Yarn, code: str) -> Holding:
    return Holding(
        id=new_id(),
        kind="skein",
        code=code,
        fleece_id=new.fleece_id or yarn.fleece_id,
        yarn_id=yarn.id,
        day=new.day,
        colour=new.colour,
        colour_name=new.colour_name,
        place=new.place,
        notes=new.notes,
    )


def _entry(session: Session, new: NewSkein, made: Portion) -> Entry:
    if new.fleece_id and new.taken_now:
        taken = taken_from(session, new.fleece_id, made.mg)
        held = {one.holding.id: balance_of(session, one.holding.id) for one in taken}
        return woolbook.spin(held, taken, (made,))
    return woolbook.arrive((made,))
