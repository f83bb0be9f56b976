"""What the wool book tells of steps: what went in, what came out, and between which states.

The book is read from its first event on, so that what a holding held before a step is known. What
was undone never happened. Wool that came in wet tells nothing, for nobody knows its water.
"""

from collections.abc import Iterator
from dataclasses import dataclass, field

from app.book.book import Book
from app.book.event import Event, Line
from app.book.event_note import readings_noted, states_of
from app.book.holding import Holding
from app.book.words import FIBRE_KINDS, SINKS, WoolState
from app.craft.fleece import steps_from
from app.planning.learning.observed import Names, Observation
from app.planning.learning.usual import usual_kept, usual_yield

SCALE_G = 0.6
"""Standard uncertainty in g of a difference of two weighings on a scale of 1 g steps, and a little
dust (practice)."""

PREPARED = {"carded": "card", "combed": "comb"}


@dataclass(frozen=True, slots=True)
class Passed:
    """mg that went into a step and came out of it, from one holding to one."""

    taken: Holding
    made: Holding
    mg_in: int
    mg_out: int


@dataclass(slots=True)
class StepsSeen:
    """The wool book while it is read."""

    book: Book
    _mg: dict[str, int] = field(default_factory=dict)
    _weighed: dict[str, WoolState] = field(default_factory=dict)

    def all(self) -> Iterator[Observation]:
        """Every step that was weighed before and after, in the order of the book."""
        undone = {one.undoes for one in self.book.events}
        for event in sorted(self.book.events, key=lambda one: one.seq):
            if event.seq not in undone and event.undoes is None:
                passed = self._passed(event)
                factors = self._factors(event, passed) if passed else ()
                if passed and factors:
                    yield from self._told(event, passed, factors)
                for line in event.lines:
                    self._mg[line.holding_id] = self._mg.get(line.holding_id, 0) + line.mg

    def _passed(self, event: Event) -> Passed | None:
        if event.kind not in ("prepare", "spin"):
            return None
        wool = [one for one in event.lines if one.holding_id not in SINKS]
        gave, got = [one for one in wool if one.mg < 0], [one for one in wool if one.mg > 0]
        if len(gave) == 1 and len(got) == 1:
            holdings = self.book.holding
            made, taken = holdings[got[0].holding_id], holdings[gave[0].holding_id]
            return Passed(taken, made, -gave[0].mg, got[0].mg)
        return self._in_place(wool[0]) if len(wool) == 1 else None

    def _in_place(self, line: Line) -> Passed:
        holding, before = self.book.holding[line.holding_id], self._mg.get(line.holding_id, 0)
        return Passed(holding, holding, before, before + line.mg)

    def _factors(self, event: Event, passed: Passed) -> tuple[str, ...]:
        states = states_of(event)
        if states is None:
            return self._without_state(event, passed)
        before, after = states
        if after == "drying":
            self._weighed[passed.made.id] = self._weighed.get(passed.taken.id, before)
            return ()
        if before == "drying":
            known = self._weighed.pop(passed.taken.id, before)
            before = known
        return () if before == "drying" else _between(before, after)

    def _without_state(self, event: Event, passed: Passed) -> tuple[str, ...]:
        """Fibre spun to a bobbin, or a skein that was weighed again once it was finished."""
        if event.step == "spin" and passed.made.kind in FIBRE_KINDS:
            return ("spin",)
        readings = self.book.readings_of.get(passed.made.id, [])
        dry = {one.id for one in readings if one.kind == "mass" and one.wool == "dry"}
        weighed = event.step == "finish" and dry.intersection(readings_noted(event))
        return ("finish",) if weighed else ()

    def _told(
        self, event: Event, passed: Passed, factors: tuple[str, ...]
    ) -> Iterator[Observation]:
        if passed.mg_in <= 0 or passed.mg_out <= 0:
            return
        names = names_of(self.book, passed.taken, passed.made)
        usual = 1.0
        for name in factors:
            settings = self.book.settings
            usual *= usual_yield(names.breed) if name == "scour" else usual_kept(name, settings)
        yield Observation(
            key=f"step {event.seq}",
            day=event.day,
            factors=factors,
            what=_words(self.book, passed, event),
            measured=passed.mg_out / passed.mg_in,
            usual=usual,
            unit="share",
            names=names,
            error=1000 * SCALE_G / min(passed.mg_in, passed.mg_out),
            holding_id=passed.made.id,
        )


def _between(before: WoolState, after: WoolState) -> tuple[str, ...]:
    """The factors of the steps between two states; none where the way leads back."""
    ahead = steps_from(after)
    done = [one for one in steps_from(before) if one not in ahead]
    return tuple(PREPARED.get(after, "card") if one == "prepare" else one for one in done)


def names_of(book: Book, taken: Holding, made: Holding | None = None) -> Names:
    """Whose wool of a holding is; of a bag of no fleece only its own name is known."""
    fleece = book.fleece.get(taken.fleece_id or "")
    states = [one.state for one in (made, taken) if one is not None and one.state in PREPARED]
    return Names(
        breed=fleece.breed if fleece else "",
        fleece=fleece.id if fleece else taken.id,
        preparation=states[0] or "" if states else "",
        yarn=(made.yarn_id if made else None) or taken.yarn_id or "",
    )


def _words(book: Book, passed: Passed, event: Event) -> str:
    fleece = book.fleece.get(passed.taken.fleece_id or "")
    name = fleece.name if fleece else passed.taken.code
    states = states_of(event)
    if event.step == "finish":
        return f"{passed.made.code}, weight before and after finishing"
    return (
        f"{name}, {states[0]} to {states[1]}" if states else f"{name}, spun to {passed.made.code}"
    )
