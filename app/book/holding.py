"""A holding: anything that holds wool, from a fleece to a finished garment."""

from dataclasses import dataclass
from datetime import date

from app.book.words import SINKS, HoldingKind, WoolState


@dataclass(frozen=True, slots=True)
class ColourAt:
    """The colour ("#rrggbb") of a skein so many mm from its outer end."""

    mm: int
    colour: str


@dataclass(frozen=True, slots=True)
class Holding:
    """What it holds in mg and mm is the balance of the wool book, never a field here.

    `code` is a label, unique among holdings and changeable; `state` is for fleeces and fibre;
    `price` is what was paid for it, as typed; `put_away` is the day it left the shelf;
    `colours` tell how its colour runs from the outer end, none where it is one; on `look_again` it
    is to be looked at for moth, and it is kept `apart` from other wool until it was.
    """

    id: str
    kind: HoldingKind
    code: str
    fleece_id: str | None = None
    yarn_id: str | None = None
    plan_id: str | None = None
    state: WoolState | None = None
    day: date | None = None
    colour: str = ""
    colour_name: str = ""
    dye_lot: str = ""
    price: str = ""
    place: str = ""
    notes: str = ""
    put_away: date | None = None
    colours: tuple[ColourAt, ...] = ()
    look_again: date | None = None
    apart: bool = False


def sinks() -> tuple[Holding, ...]:
    """The four holdings every book has: where wool comes from and where it goes unseen."""
    return tuple(Holding(id=kind, kind=kind, code=kind) for kind in SINKS)
