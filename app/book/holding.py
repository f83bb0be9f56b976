"""A holding: anything that holds wool, from a fleece to a finished garment."""

from dataclasses import dataclass
from datetime import date

from app.book.words import SINKS, HoldingKind, WoolState


@dataclass(frozen=True, slots=True)
class Holding:
    """What it holds in mg and mm is the balance of the wool book, never a field here.

    `code` is a label, unique among holdings and changeable; `state` is for fleeces and fibre;
    `price` is what was paid for it, as typed; `put_away` is the day it left the shelf.
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


def sinks() -> tuple[Holding, ...]:
    """The four holdings every book has: where wool comes from and where it goes unseen."""
    return tuple(Holding(id=kind, kind=kind, code=kind) for kind in SINKS)
