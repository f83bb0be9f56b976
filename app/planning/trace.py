"""From a garment back to the sheep, and from a fleece forward to all it became.

Wool in a holding is taken to be mixed through: what is drawn from it has the shares by mass that it
had then. A weighing changes how much there is, not what it is. What was undone never happened.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from app.book.event import Event, Line
from app.book.words import SINKS

COME_IN, WASTE, GIVEN_AWAY, WEIGHING = SINKS
Shares = Mapping[str, float]
"""Shares by mass of the wool of each origin: the holding that it first came in to."""


@dataclass(frozen=True, slots=True)
class Flow:
    """`mg` of wool that went from one holding to another in an event, with its `shares`; it is
    `part` of what the target held afterwards, without what a weighing found in the same event."""

    seq: int
    source: str
    target: str
    mg: float
    shares: Shares
    part: float


@dataclass(frozen=True, slots=True)
class Trace:
    """Every flow in the order of the events; `shares` of what each holding holds, or held last;
    `mg` of each origin in it now."""

    flows: tuple[Flow, ...]
    shares: Mapping[str, Shares]
    mg: Mapping[str, Mapping[str, float]]
    grown: Mapping[tuple[int, str], float]
    """By event and holding: what a weighing made of its amount, as a factor."""

    def origins(self, holding_id: str) -> Shares:
        """The shares by mass of where the wool of a holding came in; none for an empty one."""
        return self.shares.get(holding_id, {})


def trace(events: Iterable[Event]) -> Trace:
    """Follow the wool through the events that still stand."""
    events = sorted(events, key=lambda one: one.seq)
    undone = {one.undoes for one in events}
    following = _Following()
    for event in events:
        if event.undoes is None and event.seq not in undone:
            following.follow(event)
    return Trace(tuple(following.flows), following.shares, following.mg, following.grown)


class _Following:
    def __init__(self) -> None:
        self.flows: list[Flow] = []
        self.shares: dict[str, dict[str, float]] = {}
        self.mg: dict[str, dict[str, float]] = {}
        self.grown: dict[tuple[int, str], float] = {}

    def follow(self, event: Event) -> None:
        given = [one for one in event.lines if one.mg < 0]
        given.sort(key=lambda one: one.holding_id == WEIGHING)
        taken = [one for one in event.lines if one.mg > 0]
        whole = sum(one.mg for one in taken)
        moved = []
        for source in given:
            mixed = self._mixed(source)
            for target in taken:
                mg = -source.mg * target.mg / whole
                moved.append((source.holding_id, target.holding_id, mg, mixed))
        self.flows += self._flows(event.seq, [self._move(*one) for one in moved])

    def _mixed(self, source: Line) -> dict[str, float] | None:
        """What a source is made of; None for wool that is new, or that a weighing found."""
        if source.holding_id in (COME_IN, WEIGHING):
            return None
        return dict(self.shares.get(source.holding_id) or {source.holding_id: 1.0})

    def _move(
        self, out: str, into: str, mg: float, mixed: dict[str, float] | None
    ) -> tuple[str, str, float, Shares]:
        shares = mixed if mixed is not None else self._new(out, into)
        for origin, share in shares.items():
            self._add(out, origin, -mg * share)
            self._add(into, origin, mg * share)
        if into not in SINKS:
            self._mix(into)
        return out, into, mg, shares

    def _flows(self, seq: int, moved: list[tuple[str, str, float, Shares]]) -> Iterator[Flow]:
        gained = {into: mg for out, into, mg, _ in moved if out == WEIGHING}
        worked = {out for out, into, _, _ in moved if into != WEIGHING}
        for out, into, mg, shares in moved:
            if out == WEIGHING or (into == WEIGHING and out not in worked):
                self._grow(seq, into, out, mg)
            part = 1.0 if into in SINKS else self._part(into, mg, gained.get(into, 0.0))
            yield Flow(seq, out, into, mg, shares, part)

    def _part(self, into: str, mg: float, gained: float) -> float:
        held = sum(self.mg[into].values()) - gained
        return min(1.0, mg / held) if held > 0 else 1.0

    def _new(self, out: str, into: str) -> dict[str, float]:
        """Wool that came in is its own origin; what a weighing finds is as what lies there."""
        found = self.shares.get(into) if out == WEIGHING else None
        return dict(found or {into: 1.0})

    def _grow(self, seq: int, into: str, out: str, mg: float) -> None:
        """A weighing moved nothing from anywhere: the same wool weighs more, or less. What is
        missing after work was in what was worked: the rest of the source weighs what it did."""
        holding, more = (into, mg) if out == WEIGHING else (out, -mg)
        after = sum(self.mg[holding].values())
        if after > 0 and after - more > 0:
            self.grown[seq, holding] = after / (after - more)

    def _add(self, holding: str, origin: str, mg: float) -> None:
        held = self.mg.setdefault(holding, {})
        held[origin] = held.get(origin, 0.0) + mg

    def _mix(self, holding: str) -> None:
        """What a holding is made of changes with what comes in; drawing from it changes nothing."""
        held = {origin: mg for origin, mg in self.mg[holding].items() if mg > 0}
        whole = sum(held.values())
        if whole > 0:
            self.shares[holding] = {origin: mg / whole for origin, mg in held.items()}
