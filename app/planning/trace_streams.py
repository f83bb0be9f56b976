"""The streams of wool that lead to a holding, or that came of a fleece, in mg: what a picture of
the wool's way is drawn from."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from itertools import groupby

from app.book.words import SINKS
from app.planning.trace import COME_IN, WEIGHING, Flow, Trace

LEAST_MG = 0.5


@dataclass(frozen=True, slots=True)
class Stream:
    """Wool that went from one holding to another, in all; `came` is its place in the order in which
    the streams began."""

    source: str
    target: str
    mg: float
    came: int


def back(trace: Trace, holding_id: str) -> tuple[Stream, ...]:
    """The streams of all that ever went into a holding, from where it came in."""
    wanted: dict[str, float] = {}
    found: list[Flow] = []
    for seq, flows in _latest_first(trace):
        before = {id: wanted[id] for id in _holdings(flows) if id in wanted}
        for id in before:
            before[id] /= trace.grown.get((seq, id), 1.0)
        wanted |= before
        for flow in reversed(flows):
            mg = _of_interest(flow, holding_id, before)
            if mg > 0:
                found.append(_with(flow, mg))
                if flow.target != holding_id:
                    wanted[flow.target] -= mg
                wanted[flow.source] = wanted.get(flow.source, 0.0) + mg
    return _merged(reversed(found))


@dataclass(frozen=True, slots=True)
class Ahead:
    """The streams of all that came of some wool, and where it is: of a holding that share of what
    it holds, of a sink the mg that went there (below zero: what weighings found)."""

    streams: tuple[Stream, ...]
    shares: Mapping[str, float]
    sunk: Mapping[str, float]


def ahead(trace: Trace, roots: Iterable[str]) -> Ahead:
    """What came of all that ever was in some holdings."""
    shares = dict.fromkeys(roots, 1.0)
    fixed, sunk = frozenset(shares), dict[str, float]()
    found: list[Flow] = []
    for _, together in groupby(trace.flows, key=lambda one: one.seq):
        flows = list(together)
        before = {id: shares.get(id, 0.0) for id in _holdings(flows)}
        for flow in sorted(flows, key=lambda one: one.source == WEIGHING):
            found_by_weighing = flow.source == WEIGHING
            share = shares.get(flow.target, 0.0) if found_by_weighing else before[flow.source]
            _sink(sunk, flow, share)
            if flow.source in SINKS or flow.target in fixed:
                continue
            if flow.target not in SINKS:
                more = flow.part * (share - before[flow.target])
                shares[flow.target] = shares.get(flow.target, 0.0) + more
            if share > 0:
                found.append(_with(flow, flow.mg * share))
    return Ahead(_merged(found), shares, sunk)


def _sink(sunk: dict[str, float], flow: Flow, share: float) -> None:
    for sink, way in ((flow.target, 1), (flow.source, -1)):
        if sink in SINKS and sink != COME_IN:
            sunk[sink] = sunk.get(sink, 0.0) + way * flow.mg * share


def _holdings(flows: Iterable[Flow]) -> set[str]:
    return {id for flow in flows for id in (flow.source, flow.target)}


def _of_interest(flow: Flow, holding_id: str, wanted: dict[str, float]) -> float:
    """The mg of a flow that ended in the holding; a weighing brings no wool from anywhere."""
    if WEIGHING in (flow.source, flow.target):
        return 0.0
    if flow.target == holding_id:
        return flow.mg
    return min(wanted.get(flow.target, 0.0) * flow.part, flow.mg)


def _latest_first(trace: Trace) -> Iterator[tuple[int, list[Flow]]]:
    for seq, flows in groupby(reversed(trace.flows), key=lambda one: one.seq):
        yield seq, list(reversed(list(flows)))


def _with(flow: Flow, mg: float) -> Flow:
    return Flow(flow.seq, flow.source, flow.target, mg, flow.shares, flow.part)


def _merged(flows: Iterable[Flow]) -> tuple[Stream, ...]:
    mg: dict[tuple[str, str], float] = {}
    for flow in flows:
        way = flow.source, flow.target
        mg[way] = mg.get(way, 0.0) + flow.mg
    streams = (Stream(*way, found, came) for came, (way, found) in enumerate(mg.items()))
    return tuple(one for one in streams if one.mg >= LEAST_MG)
