"""Skeins out to a table and in from one: all its rows or none."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date
from decimal import Decimal

from sqlmodel import Session

from app.book import woolbook
from app.book.book import Book
from app.book.event import Event
from app.book.holding import Holding
from app.book.ids import new_id
from app.book.reading import Reading
from app.book.skein_csv import write_skein_table
from app.book.woolbook import Portion
from app.book.words import YARN_KINDS
from app.book.yarn import Yarn
from app.store.kept import write
from app.store.records import load_book, post, put
from app.work.skein_add import NewSkein, free_codes, yarn_kept
from app.work.skein_readings import (
    counting,
    length_reading,
    mass_reading,
    unfinished,
    wraps_reading,
)


@dataclass(frozen=True, slots=True)
class ListedSkein:
    """A skein of a table: of the `line` it stands in, with what only a label says."""

    line: int
    new: NewSkein
    dye_lot: str = ""
    price: str = ""


@dataclass(frozen=True, slots=True)
class BroughtIn:
    """The skeins that came to the shelf and the events, one a day, that brought them."""

    skeins: tuple[Holding, ...]
    events: tuple[Event, ...]


def bring_in(session: Session, listed: Sequence[ListedSkein]) -> BroughtIn:
    """Add every skein of a table and the yarns it names; Refusal for a code in use."""
    brought: list[tuple[ListedSkein, Portion]] = []
    for one, skein in _labelled(session, [_by_label(one) for one in listed]):
        put(session, skein)
        readings = _readings(one.new, skein)
        write(session, Reading, readings)
        length = counting(readings)
        brought.append((one, Portion(skein, one.new.weight.mg, length.value if length else 0)))
    days = sorted({one.new.day for one, _ in brought})
    events = [
        _arrived(session, day, (p for one, p in brought if one.new.day == day)) for day in days
    ]
    return BroughtIn(tuple(portion.holding for _, portion in brought), tuple(events))


def export_skeins(session: Session) -> str:
    """All skeins on the shelf as a table, by code; the same shelf always gives the same text."""
    return write_skein_table(skein_cells(load_book(session)))


def skein_cells(book: Book) -> Iterator[dict[str, str]]:
    """The cells of each skein on the shelf, by column; amounts in g and m whatever the settings."""
    on_shelf = (one for one in book.holdings if one.kind in YARN_KINDS and not one.put_away)
    for skein in sorted(on_shelf, key=lambda one: one.code):
        if skein.id in book.balances and book.balances[skein.id].mg > 0:
            yield _cells(book, skein)


def _labelled(
    session: Session, listed: Sequence[ListedSkein]
) -> Iterator[tuple[ListedSkein, Holding]]:
    """Each skein with its label: first those that have a code, then the others, yarn by yarn, so
    that a code proposed is one no other has. They must be put down as they come."""
    typed = [one for one in listed if one.new.code]
    for yarn in {one.new.yarn.id: one.new.yarn for one in listed}.values():
        yarn_kept(session, yarn)
    if typed:
        codes = tuple(one.new.code for one in typed)
        free_codes(session, typed[0].new.yarn, codes, len(codes))
    for one in typed:
        yield one, _holding(one, one.new.code)
    yield from _numbered(session, [one for one in listed if not one.new.code])


def _numbered(
    session: Session, listed: Sequence[ListedSkein]
) -> Iterator[tuple[ListedSkein, Holding]]:
    by_yarn: dict[str, list[ListedSkein]] = {}
    for one in listed:
        by_yarn.setdefault(one.new.yarn.id, []).append(one)
    for alike in by_yarn.values():
        codes = free_codes(session, alike[0].new.yarn, (), len(alike))
        for one, code in zip(alike, codes, strict=True):
            yield one, _holding(one, code)


def _holding(one: ListedSkein, code: str) -> Holding:
    new = one.new
    return Holding(
        id=new_id(),
        kind="ball" if new.yarn.bought else "skein",
        code=code,
        fleece_id=new.fleece_id or new.yarn.fleece_id,
        yarn_id=new.yarn.id,
        day=new.day,
        colour=new.colour,
        colour_name=new.colour_name,
        dye_lot=one.dye_lot,
        price=one.price,
        place=new.place,
        notes=new.notes,
    )


def _by_label(one: ListedSkein) -> ListedSkein:
    """What is known of a bought ball is what its label states, unless it was reeled."""
    new = one.new
    if not new.yarn.bought:
        return one
    weight = replace(new.weight, instrument="label")
    lengths = tuple(it if it.turns else replace(it, instrument="label") for it in new.lengths)
    return replace(one, new=replace(new, weight=weight, lengths=lengths))


def _readings(new: NewSkein, skein: Holding) -> list[Reading]:
    readings = [length_reading(skein.id, one, new.day) for one in new.lengths]
    readings.append(mass_reading(skein.id, new.weight, new.day))
    if new.wraps:
        readings.append(wraps_reading(skein.id, new.wraps, new.day))
    return readings


def _arrived(session: Session, day: date, portions: Iterable[Portion]) -> Event:
    entry = woolbook.arrive(tuple(portions))
    return post(session, entry.kind, day, entry.lines)


def _cells(book: Book, skein: Holding) -> dict[str, str]:
    yarn = book.yarn.get(skein.yarn_id or "") or Yarn(id="", name="", fibre="")
    fleece = book.fleece.get(skein.fleece_id or yarn.fleece_id or "")
    readings = book.readings_of.get(skein.id, [])
    wraps = [one.value for one in readings if one.kind == "wraps"][-1:]
    return {
        "code": skein.code,
        "yarn": yarn.name,
        "fibre": yarn.fibre,
        "plies": str(yarn.plies or ""),
        "twist": yarn.twist,
        "weight": f"{_plain(Decimal(book.balances[skein.id].mg) / 1000)} g",
        **_length_cells(readings, book.balances[skein.id].mm),
        "finished": "no" if unfinished(readings) else "yes",
        "wraps": _plain(Decimal(wraps[0]) / 1000) if wraps else "",
        "fleece": fleece.name if fleece else "",
        "bought": "yes" if yarn.bought else "no",
        "dye lot": skein.dye_lot,
        "price": skein.price,
        "colour": skein.colour or yarn.colour,
        "colour name": skein.colour_name or yarn.colour_name,
        "place": skein.place,
        "day": skein.day.isoformat() if skein.day else "",
        "notes": skein.notes,
    }


def _length_cells(readings: Iterable[Reading], mm: int) -> dict[str, str]:
    """Girth and turns while the skein is as it was reeled, else the length it has now."""
    length = counting(readings)
    if length and length.turns and length.girth_mm and length.value == mm:
        turns = _plain(Decimal(repr(length.turns)))
        return {"girth": f"{_plain(Decimal(length.girth_mm) / 1000)} m", "turns": turns}
    return {"length": f"{_plain(Decimal(mm) / 1000)} m"} if mm else {}


def _plain(number: Decimal) -> str:
    """A number that reads the same where the decimal sign is a comma: never with three decimals,
    which could be thousands."""
    text = f"{number:f}"
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    return f"{text}0" if text[-4:-3] == "." else text
