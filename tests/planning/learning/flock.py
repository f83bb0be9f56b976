"""Books of wool that was washed, carded and spun, with every weighing known."""

from datetime import date, timedelta

from app.book.book import Book
from app.book.event import Line
from app.book.event_note import step_note
from app.book.woolbook import Portion, arrive, correct, prepare, spin, undo
from tests.books import a_book, a_holding, a_reading, an_event

FIRST = date(2026, 5, 1)


class Flock:
    """A book while its events are written: each step by name, in grams."""

    def __init__(self, *records, settings=None):
        self.records, self.settings = list(records), settings
        self.events = []
        self.grams = {}

    def fleece(self, holding, grams, fleece_id="Bramble", state="raw"):
        found = a_holding(holding, fleece_id=fleece_id, state=state)
        self.records.append(found)
        self._add(arrive([Portion(found, round(1000 * grams))]))
        return found

    def step(self, holding, before, after, grams):
        """All of a holding goes from one state to the next and weighs so much."""
        now = Portion(self.holding(holding), self.mg(holding))
        made = Portion(self.holding(holding), round(1000 * grams))
        entry = prepare(self.held(), now, made)
        lines = entry.lines or (Line(holding, 0),)
        return self._add(entry._replace(lines=lines), note=step_note(before, after))

    def part(self, holding, made, before, after, taken, grams, kind="fibre"):
        """A part of a holding becomes one of its own."""
        source = self.holding(holding)
        new = a_holding(made, kind, fleece_id=source.fleece_id, state=after)
        self.records.append(new)
        entry = prepare(
            self.held(), Portion(source, round(1000 * taken)), Portion(new, round(1000 * grams))
        )
        return self._add(entry, note=step_note(before, after))

    def spun(self, holding, made, taken, grams, kind="bobbin", **event):
        source = self.holding(holding)
        new = a_holding(made, kind, fleece_id=source.fleece_id)
        self.records.append(new)
        taken, spun = Portion(source, round(1000 * taken)), Portion(new, round(1000 * grams))
        return self._add(spin(self.held(), [taken], [spun]), **event)

    def weighed(self, holding, grams):
        reading = a_reading(holding, round(1000 * grams))
        return self._add(correct(self.held(), self.holding(holding), reading))

    def undone(self, event):
        self._add(undo(event, self.events), undoes=event.seq)

    def book(self, *marks) -> Book:
        return a_book(*self.records, *self.events, *marks, settings=self.settings)

    def holding(self, name):
        return next(one for one in self.records if one.id == name)

    def mg(self, name):
        return self.held()[name].mg

    def held(self):
        return a_book(*self.records, *self.events).balances

    def _add(self, entry, **other):
        seq = len(self.events) + 1
        day = FIRST + timedelta(days=seq)
        self.events.append(an_event(seq, entry, **{"day": day} | other))
        return self.events[-1]
