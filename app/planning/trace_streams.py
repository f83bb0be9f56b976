"""The streams of wool that lead to a holding, or that came of a fleece, in mg: what a picture of
the wool's way is drawn from."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import groupby

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
        for holding in list(wanted):
            wanted[holding] /= trace.grown.get((seq, holding), 1.0)
        before = dict(wanted)
        for flow in reversed(flows):
            mg = _of_interest(flow, holding_id, before)
            if mg > 0:
                found.append(_with(flow, mg))
                if flow.target != holding_id:
                    wanted[flow.target] -= mg
                wanted[flow.source] = wanted.get(flow.source, 0.0) + mg
    return _merged(reversed(found))


def ahead(trace: Trace, origins: Iterable[str]) -> tuple[Stream, ...]:
    """The streams of all that came of the wool of some origins."""
    origins = tuple(origins)
    flows = (one for one in trace.flows if COME_IN not in (one.source, one.target))
    of_it = ((one, sum(one.shares.get(origin, 0.0) for origin in origins)) for one in flows)
    return _merged(_with(one, one.mg * share) for one, share in of_it if share > 0)


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
