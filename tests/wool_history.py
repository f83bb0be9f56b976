"""Histories of wool at random: fleeces come in, are prepared, mixed, spun, knit, weighed again, and
events are taken back. Every event is made by the rules of the wool book."""

import random
from collections.abc import Callable, Iterator
from datetime import date

from app.book import woolbook
from app.book.errors import WoolBookError
from app.book.event import Balance, Event, Line
from app.book.holding import Holding
from app.book.woolbook import WEIGHING, Entry, Portion
from app.book.words import HoldingKind

DAY = date(2026, 5, 1)
LEAST_MG = 10_000
YARN_MM_PER_MG = 2


class History:
    """What has happened so far; `holdings` are all it made."""

    def __init__(self, seed: int) -> None:
        self.chance = random.Random(seed)
        self.events: list[Event] = []
        self.holdings: list[Holding] = []
        self.mg: dict[str, int] = {}
        self.mm: dict[str, int] = {}

    def go_on(self, steps: int) -> "History":
        """So many deeds more; one that cannot be done just now is left out."""
        deeds: list[Callable[[], Iterator[Entry]]] = [
            self._comes_in,
            self._is_prepared,
            self._is_mixed,
            self._is_spun,
            self._is_spun,
            self._is_knit,
            self._is_weighed,
            self._is_weighed,
        ]
        for _ in range(steps):
            if self.events and self.chance.random() < 0.1:
                self._take_back()
            else:
                for entry in self.chance.choice(deeds)():
                    self._post(entry)
        return self

    def held(self, holding: Holding) -> Balance:
        return Balance(self.mg.get(holding.id, 0), self.mm.get(holding.id, 0))

    def _post(self, entry: Entry, undoes: int | None = None) -> None:
        seq = len(self.events) + 1
        note = "taken back" if undoes else ""
        self.events.append(Event(seq, entry.kind, DAY, entry.lines, note, undoes))
        for line in entry.lines:
            self.mg[line.holding_id] = self.mg.get(line.holding_id, 0) + line.mg
            self.mm[line.holding_id] = self.mm.get(line.holding_id, 0) + line.mm

    def _new(self, kind: HoldingKind) -> Holding:
        made = Holding(f"{kind} {len(self.holdings)}", kind, f"{kind} {len(self.holdings)}")
        self.holdings.append(made)
        return made

    def _some(self, *kinds: HoldingKind) -> Holding | None:
        """A holding of those kinds that has something, of the last hundred."""
        last = self.holdings[-100:]
        full = [one for one in last if one.kind in kinds and self.held(one).mg > LEAST_MG]
        return self.chance.choice(full) if full else None

    def _part(self, holding: Holding) -> int:
        return self.chance.randint(1, self.held(holding).mg)

    def _comes_in(self) -> Iterator[Entry]:
        mg = self.chance.randint(20_000, 3_000_000)
        yield woolbook.arrive([Portion(self._new("fleece"), mg)])

    def _is_prepared(self) -> Iterator[Entry]:
        wool = self._some("fleece", "fibre")
        if wool:
            mg = self.held(wool).mg
            made = Portion(wool, round(mg * self.chance.uniform(0.6, 1.02)))
            yield woolbook.prepare({wool.id: self.held(wool)}, Portion(wool, mg), made)

    def _is_mixed(self) -> Iterator[Entry]:
        lots = {one.id: one for _ in range(3) if (one := self._some("fleece", "fibre"))}
        taken = [Portion(one, self._part(one)) for one in lots.values()]
        if taken:
            held = {one.id: self.held(one) for one in lots.values()}
            mg = sum(one.mg for one in taken)
            made = Portion(self._new("fibre"), round(mg * self.chance.uniform(0.8, 1.01)))
            yield woolbook.mix(held, taken, made)

    def _is_spun(self) -> Iterator[Entry]:
        wool = self._some("fleece", "fibre")
        if wool:
            mg = self._part(wool)
            yarn = round(mg * self.chance.uniform(0.8, 1.0))
            made = Portion(self._new("skein"), yarn, YARN_MM_PER_MG * yarn)
            yield woolbook.spin({wool.id: self.held(wool)}, [Portion(wool, mg)], [made])

    def _is_knit(self) -> Iterator[Entry]:
        skein = self._some("skein")
        if skein:
            held = self.held(skein)
            mm = self.chance.randint(1, held.mm) if held.mm else 0
            taken = Portion(skein, woolbook.mg_of(held, mm) or self._part(skein), mm)
            yield woolbook.use({skein.id: held}, [taken], self._new("garment"))

    def _is_weighed(self) -> Iterator[Entry]:
        one = self._some("fleece", "fibre", "skein", "garment")
        if one:
            mg = self.held(one).mg
            gained = self.chance.randint(-mg // 20, mg // 20) or 1
            yield Entry("correct", (Line(one.id, gained), Line(WEIGHING, -gained)))

    def _take_back(self) -> None:
        event = self.chance.choice(self.events[-5:])
        try:
            entry = woolbook.undo(event, self.events)
        except WoolBookError:
            return
        self._post(entry, undoes=event.seq)


def a_random_history(steps: int, seed: int) -> History:
    """A history of about so many events."""
    return History(seed).go_on(steps)
