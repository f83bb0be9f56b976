"""Keeps the demo's records as a maker would write them down, one event after another."""

from dataclasses import replace
from datetime import date
from typing import Any

from app.book.book import Book
from app.book.event import Event, balances
from app.book.fleece import Fleece
from app.book.holding import Holding, sinks
from app.book.reading import Reading
from app.book.woolbook import Entry, Portion, arrive, prepare, spin
from app.book.words import WoolState
from app.book.yarn import Yarn
from tests.books import TABLES

KEPT_IN_SPINNING = 0.97 * 0.98
"""What spinning and finishing leave of the fibre, as in the settings' defaults."""

GIRTH_MM = 1500


class Diary:
    """Records with ids that follow from their order, so that the demo is the same every time."""

    def __init__(self) -> None:
        self._tables: dict[str, list[Any]] = {name: [] for name in TABLES.values()}
        self._tables["holdings"] += sinks()
        self._made = 0

    def new_id(self) -> str:
        """Shaped like the program's own ids, and older than any of them."""
        self._made += 1
        return f"00demx{self._made:04}{'0' * 10}"

    def add(self, record: Any) -> Any:
        self._tables[TABLES[type(record)]].append(record)
        return record

    def change(self, old: Any, new: Any) -> Any:
        records = self._tables[TABLES[type(old)]]
        records[records.index(old)] = new
        return new

    @property
    def held(self) -> dict[str, Any]:
        return balances(self._tables["events"])

    def post(self, day: date, entry: Entry, note: str = "") -> None:
        seq = len(self._tables["events"]) + 1
        self.add(Event(seq, entry.kind, day, entry.lines, note))

    def book(self) -> Book:
        """All of it, the events in the order of their days."""
        tables = {name: tuple(records) for name, records in self._tables.items()}
        by_day = sorted(tables["events"], key=lambda event: event.day)
        tables["events"] = tuple(replace(one, seq=n) for n, one in enumerate(by_day, start=1))
        return Book(**tables)

    def fleece(
        self, code: str, day: date, grams: int, state: WoolState, **known: Any
    ) -> tuple[Fleece, Holding]:
        """A fleece comes in, weighed in the state it is in."""
        fleece = self.add(Fleece(id=self.new_id(), **known))
        holding = self.add(
            Holding(self.new_id(), "fleece", code, fleece.id, state=state, day=day, place="Loft")
        )
        self.post(day, arrive([Portion(holding, grams * 1000)]))
        self.weigh(holding, day, grams, "in the grease" if state in ("raw", "skirted") else "dry")
        return fleece, holding

    def work_up(
        self, source: Holding, into: Holding, day: date, taken: int, made: int, note: str
    ) -> None:
        """Skirt, scour, card or comb `taken` grams into `made` grams."""
        taken_mg, made_mg = taken * 1000, made * 1000
        entry = prepare(self.held, Portion(source, taken_mg), Portion(into, made_mg))
        self.post(day, entry, note)

    def skein(
        self,
        yarn: Yarn,
        code: str,
        fibre: Holding,
        day: date,
        grams: int,
        turns: float,
        **known: Any,
    ) -> Holding:
        """A skein spun from `fibre`, weighed to 1 g and measured on the reel.

        `before` are the turns before finishing; without `finished` no later measurement exists.
        """
        before, finished = known.pop("before", None), known.pop("finished", True)
        wraps = known.pop("wraps", None)
        skein = self.add(
            Holding(self.new_id(), "skein", code, fibre.fleece_id, yarn.id, day=day, **known)
        )
        taken = Portion(fibre, round(grams * 1000 / KEPT_IN_SPINNING))
        made = Portion(skein, grams * 1000, round(turns * GIRTH_MM))
        self.post(day, spin(self.held, [taken], [made]))
        self.weigh(skein, day, grams)
        if before:
            self.reel(skein, day, before, finished=False)
        self.reel(skein, day, turns, finished)
        if wraps:
            self.wrap(skein, day, wraps)
        return skein

    def weigh(self, holding: Holding, day: date, grams: int, wool: Any = "dry") -> None:
        self._read(holding, "mass", grams * 1000, f"{grams}", "g", "scale", day, wool=wool)

    def reel(self, skein: Holding, day: date, turns: float, finished: bool) -> None:
        how = {"finished": finished, "girth_mm": GIRTH_MM, "turns": float(turns)}
        value = round(turns * GIRTH_MM)
        self._read(skein, "length", value, f"{turns:g}", "turns", "reel", day, **how)

    def wrap(self, skein: Holding, day: date, wraps: float) -> None:
        value = round(wraps * 1000)
        self._read(skein, "wraps", value, f"{wraps:g}", "wraps per inch", "gauge", day)

    def label(self, ball: Holding, day: date, grams: int, metres: int) -> None:
        self._read(ball, "mass", grams * 1000, f"{grams}", "g", "label", day)
        self._read(ball, "length", metres * 1000, f"{metres}", "m", "label", day)

    def _read(
        self,
        holding: Holding,
        kind: Any,
        value: int,
        typed: str,
        unit: str,
        instrument: Any,
        day: date,
        **other: Any,
    ) -> None:
        start = (self.new_id(), holding.id, kind, value, typed, unit, instrument, day)
        self.add(Reading(*start, **other))
