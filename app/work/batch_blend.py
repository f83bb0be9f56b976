"""Blend fleeces or colours: several lots of wool become one, which is a fleece of its own name."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from sqlmodel import Session

from app.book import woolbook
from app.book.book import Book
from app.book.event import Event
from app.book.event_note import noted
from app.book.fleece import Fleece
from app.book.holding import Holding
from app.book.ids import new_id
from app.book.woolbook import Portion
from app.book.words import FIBRE_KINDS, WoolState
from app.planning.blend import blend_of, fibres_together
from app.store.records import load_book, post, put
from app.store.skein_find import balance_of
from app.work.fleece_name import free_code
from app.work.refusal import Refusal
from app.work.skein_readings import Weight, mass_reading
from app.work.wool_traced import traced


@dataclass(frozen=True, slots=True)
class NewBlend:
    """Mg `taken` of each lot, by its holding; what they became, what it weighs, and how it looks.

    `passes` is how often it went through the carder or the combs.
    """

    name: str
    taken: Mapping[str, int]
    weight: Weight
    state: WoolState
    day: date
    passes: int = 0
    colour: str = ""
    colour_name: str = ""
    place: str = ""


@dataclass(frozen=True, slots=True)
class Blended:
    """The new lot, its event, the mg it weighs, and mg lost (below zero: gained)."""

    fleece: Fleece
    holding: Holding
    event: Event
    mg: int
    lost_mg: int


def blend(session: Session, new: NewBlend) -> Blended:
    """Mix so much of each lot into one.

    Refusal for a name in use or fewer than two lots; HoldsTooLittle beyond what a lot has.
    """
    book = load_book(session)
    lots = {id: mg for id, mg in new.taken.items() if mg > 0}
    if len(lots) < 2:
        raise Refusal("taken", "Say of two lots or more how much went in.")
    code = free_code(session, new.name, None)
    fleece = _fleece(book, new, lots)
    holding = _holding(new, fleece, code, [book.holding[id] for id in lots])
    held = {id: balance_of(session, id) for id in lots}
    taken = [Portion(book.holding[id], mg) for id, mg in lots.items()]
    entry = woolbook.mix(held, taken, Portion(holding, new.weight.mg))
    reading = mass_reading(holding.id, new.weight, new.day)
    put(session, fleece)
    put(session, holding)
    put(session, reading)
    note = noted("", [reading])
    event = post(session, entry.kind, new.day, entry.lines, note, step="blend", passes=new.passes)
    lost_mg = sum(lots.values()) - new.weight.mg
    return Blended(fleece, holding, event, new.weight.mg, lost_mg)


def lots_of(book: Book) -> tuple[Holding, ...]:
    """The wool on the shelf that can be blended, by its label; none that lies wet."""
    there = (
        one
        for one in book.holdings
        if one.kind in FIBRE_KINDS and one.kind != "bobbin" and one.put_away is None
        if one.state != "drying"
    )
    full = (one for one in there if one.id in book.balances and book.balances[one.id].mg > 0)
    return tuple(sorted(full, key=lambda one: (one.code, one.id)))


def _fleece(book: Book, new: NewBlend, lots: Mapping[str, int]) -> Fleece:
    shares = fibres_together(book, traced(book), {id: float(mg) for id, mg in lots.items()})
    fibres = blend_of(shares)
    chief = max(shares, key=lambda one: shares[one], default="unknown")
    return Fleece(
        id=new_id(),
        name=new.name,
        breed=_common(book, lots),
        fibre=" and ".join(one.fibre for one in fibres[:2]) or chief,
        colour=new.colour,
        colour_name=new.colour_name,
        blend=fibres,
    )


def _common(book: Book, lots: Mapping[str, int]) -> str:
    """The breed, if all lots are of one."""
    fleeces = [book.fleece.get(book.holding[id].fleece_id or "") for id in lots]
    breeds = {one.breed if one else "" for one in fleeces}
    return breeds.pop() if len(breeds) == 1 else ""


def _holding(new: NewBlend, fleece: Fleece, code: str, lots: Sequence[Holding]) -> Holding:
    """The new lot; it lies apart, and is looked at, as the first of what went in."""
    looked = [one.look_again for one in lots if one.look_again]
    return Holding(
        id=new_id(),
        kind="fleece",
        code=code,
        fleece_id=fleece.id,
        state=new.state,
        day=new.day,
        colour=new.colour,
        colour_name=new.colour_name,
        place=new.place,
        look_again=min(looked, default=None),
        apart=any(one.apart for one in lots),
    )
