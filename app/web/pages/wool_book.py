"""The wool book on screen: every event with its lines, and what every holding holds."""

from collections.abc import Mapping
from dataclasses import dataclass

from app.book.event import Event, Line
from app.book.event_note import reason_noted, states_of
from app.book.words import FIBRE_KINDS, SINKS, YARN_KINDS
from app.store.wool_list import BalanceLine
from app.web.pages.answer import Sentence
from app.web.pages.fleece_history import STEP_WORDS, passes_said
from app.web.shown import MINUS, Shown
from app.work.wool_book import Balances, Events

KIND_WORDS = {
    "arrive": "came in",
    "prepare": "prepared",
    "spin": "spun",
    "wind": "wound",
    "use": "knit",
    "correct": "put right",
    "put away": "put away",
    "undo": "undone",
}


@dataclass(frozen=True, slots=True)
class Moved:
    """What one holding gained or gave, in words, and where it is seen."""

    name: str
    url: str
    amount: str


@dataclass(frozen=True, slots=True)
class EventRow:
    """An event in words; `correction` marks what sets the book right, with its `reason`;
    `undo_url` where it can still be taken back."""

    seq: int
    day: str
    what: str
    reason: str
    correction: bool
    undone: bool
    moved: tuple[Moved, ...]
    undo_url: str


@dataclass(frozen=True, slots=True)
class WoolBookPage:
    sentence: Sentence
    rows: tuple[EventRow, ...]
    only: bool
    earlier_url: str


@dataclass(frozen=True, slots=True)
class BalanceRow:
    name: str
    url: str
    kind: str
    amount: str
    length: str


@dataclass(frozen=True, slots=True)
class BalancesPage:
    sentence: Sentence
    rows: tuple[BalanceRow, ...]
    yarn: bool
    earlier_url: str
    later_url: str


def wool_book_page(found: Events, only: bool, shown: Shown) -> WoolBookPage:
    """A page of events, the latest first."""
    more = f"/wool-book?before={found.events[-1].seq}" if found.more else ""
    return WoolBookPage(
        sentence=_sentence(found.sums, shown),
        rows=tuple(_row(one, found, shown) for one in found.events),
        only=only,
        earlier_url=more + ("&corrections=1" if more and only else ""),
    )


def balances_page(found: Balances, yarn: bool, page: int, shown: Shown) -> BalancesPage:
    """A page of balances, the heaviest first."""
    address = f"/wool-book/balances?of={'yarn' if yarn else 'other'}&page="
    return BalancesPage(
        sentence=_sentence(found.sums, shown),
        rows=tuple(_balance(one, shown) for one in found.lines),
        yarn=yarn,
        earlier_url=f"{address}{page - 1}" if page > 1 else "",
        later_url=f"{address}{page + 1}" if found.more else "",
    )


def seen_at(line: BalanceLine) -> str:
    """The address of the page of a holding; of a sink there is none."""
    if line.kind in SINKS:
        return ""
    if line.kind in YARN_KINDS:
        return f"/skeins/{line.id}"
    if line.kind in FIBRE_KINDS and line.fleece_id:
        return f"/fleeces/{line.fleece_id}"
    return f"/garments/{line.plan_id}" if line.plan_id else f"/wool-book/{line.id}"


def _sentence(sums: Mapping[str, int], shown: Shown) -> Sentence:
    """All that came in, and where it is: nothing is lost."""
    came, waste, given, weighing = (sums.get(one, 0) / 1000 for one in SINKS)
    if not came:
        return Sentence("idle", "Nothing has come in yet.")
    held = -came - waste - given - weighing
    parts = [f"{shown.mass(held)} is held", f"{shown.mass(waste)} went to waste"]
    parts += [f"{shown.mass(given)} was given away"] if given else []
    air = f"{shown.mass(abs(weighing))} {'less' if weighing > 0 else 'more'} by weighing again"
    parts += [air] if weighing else []
    return Sentence("idle", f"{shown.mass(-came)} came in:", f" {', '.join(parts)}.")


def _row(event: Event, found: Events, shown: Shown) -> EventRow:
    undone = event.seq in found.undone
    return EventRow(
        seq=event.seq,
        day=shown.day(event.day),
        what=_what(event),
        reason=reason_noted(event),
        correction=event.kind in ("correct", "undo"),
        undone=undone,
        moved=tuple(_moved(one, found, shown) for one in event.lines if one.mg or one.mm),
        undo_url="" if undone or event.kind == "undo" else f"/wool-book/event/{event.seq}",
    )


def _what(event: Event) -> str:
    if event.undoes is not None:
        return f"taken back: number {event.undoes}"
    words = STEP_WORDS.get(event.step) or KIND_WORDS[event.kind]
    states = states_of(event)
    words += f", {states[0]} to {states[1]}" if states else ""
    return words + (f", {passes_said(event.passes)}" if event.passes else "")


def _moved(line: Line, found: Events, shown: Shown) -> Moved:
    tag = found.tags[line.holding_id]
    amounts = [_signed(line.mg, shown.mass(abs(line.mg) / 1000))] if line.mg else []
    amounts += [_signed(line.mm, shown.length(abs(line.mm) / 1000))] if line.mm else []
    return Moved(tag.code, seen_at(tag), ", ".join(amounts))


def _signed(amount: int, words: str) -> str:
    return f"{'+' if amount > 0 else MINUS}{words}"


def _balance(line: BalanceLine, shown: Shown) -> BalanceRow:
    sign = MINUS if line.mg < 0 else ""
    return BalanceRow(
        name=line.code,
        url=seen_at(line),
        kind=line.kind,
        amount=f"{sign}{shown.mass(abs(line.mg) / 1000)}",
        length=shown.length(line.mm / 1000) if line.mm else "",
    )
