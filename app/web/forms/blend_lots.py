"""The form on which several lots of wool are blended into one."""

from collections.abc import Sequence
from datetime import date

from app.book.book import Book
from app.book.holding import Holding
from app.book.words import WoolState
from app.web.forms.filled import Filled
from app.web.forms.fleece_weigh import MOST_PASSES
from app.web.forms.reader import Reader
from app.web.shown import Shown
from app.work.batch_blend import NewBlend
from app.work.fleece_doubt import MOST_FROM_AIR
from app.work.skein_readings import Weight

TAKEN = "taken_"
STATES: dict[WoolState, str] = {
    "carded": "carded: rolags, batts or roving",
    "combed": "combed top",
    "scoured": "loose, clean and dry",
    "raw": "raw, in the grease",
}


def blend_lot_values(today: date, lots: Sequence[Holding], chosen: str) -> Filled:
    """The form as it is opened; of a `chosen` lot nothing is filled in but its row is there."""
    values = {"state": "carded", "day": today.isoformat(), "name": "", "passes": ""}
    values |= {f"{TAKEN}{one.id}": "" for one in lots}
    return Filled(values | {"chosen": chosen})


def read_blend_of(reader: Reader, book: Book, lots: Sequence[Holding], today: date) -> NewBlend:
    """The blend as typed; good where the reader is ok."""
    taken = {one.id: mg for one in lots if (mg := _taken(reader, book, one))}
    if len(taken) < 2:
        reader.refuse(f"{TAKEN}{lots[0].id}" if lots else "name", "Fill in two lots or more.")
    weight = reader.mass("weight", required=True, least=1)
    whole = sum(taken.values())
    if reader.ok and weight and weight > whole * (1 + MOST_FROM_AIR) and not reader.flag("sure"):
        shown = Shown(reader.settings)
        now, had = shown.mass(weight / 1000), shown.mass(whole / 1000)
        reader.refuse("sure", f"{now} came of {had}. Weigh again, or tick this.")
    return NewBlend(
        name=reader.text("name", required=True, longest=80),
        taken=taken,
        weight=Weight(weight or 0, reader.typed("weight"), reader.settings.mass_unit),
        state=reader.choice("state", STATES) or "carded",
        day=reader.day("day", required=True, until=today) or today,
        passes=reader.whole("passes", most=MOST_PASSES) or 0,
        colour=reader.colour("colour"),
        colour_name=reader.text("colour_name", longest=60),
        place=reader.text("place", longest=80),
    )


def _taken(reader: Reader, book: Book, lot: Holding) -> int | None:
    held = book.balances[lot.id].mg
    mg = reader.mass(f"{TAKEN}{lot.id}")
    if mg is not None and mg > held:
        has = Shown(reader.settings).mass(held / 1000)
        reader.refuse(f"{TAKEN}{lot.id}", f"The book has {has} of it. Weigh it first.")
        return None
    return mg
