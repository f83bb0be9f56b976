"""The streams of wool laid out in columns, from where it came in to where it ended: the order of a
picture, without its measures."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from app.book.words import SINKS
from app.planning.trace_streams import Stream

NONE_LEFT: Mapping[str, float] = {}

MOST_IN_A_COLUMN = 8
"""More holdings than this side by side are drawn as one, "and others"."""


@dataclass(frozen=True, slots=True)
class Node:
    """Holdings drawn as one block, mostly one; `mg` went through: the more of in and out."""

    holdings: tuple[str, ...]
    column: int
    mg: float


@dataclass(frozen=True, slots=True)
class Band:
    """A stream from one node to another, by their places in the list of nodes."""

    source: int
    target: int
    mg: float


@dataclass(frozen=True, slots=True)
class Layers:
    """Nodes by column, the largest first, and the bands between them."""

    nodes: tuple[Node, ...]
    bands: tuple[Band, ...]
    columns: int


def layers(streams: Iterable[Stream], left: Mapping[str, float] = NONE_LEFT) -> Layers:
    """Streams in columns; what only gives is in the first, a sink beside what reached it last.
    `left` is the mg that is still in a holding, beside what flowed out of it."""
    streams = tuple(streams)
    column = _columns(streams)
    through = _through(streams, left)
    nodes = _nodes(column, through)
    place = {id: number for number, node in enumerate(nodes) for id in node.holdings}
    bands: dict[tuple[int, int], float] = {}
    for one in streams:
        ends = place[one.source], place[one.target]
        if ends[0] != ends[1]:
            bands[ends] = bands.get(ends, 0.0) + one.mg
    drawn = tuple(Band(*ends, mg) for ends, mg in sorted(bands.items()))
    return Layers(nodes, drawn, max(column.values(), default=-1) + 1)


def _columns(streams: tuple[Stream, ...]) -> dict[str, int]:
    """Each holding one column after the last that gave to it before it gave itself."""
    column: dict[str, int] = {}
    gave: set[str] = set()
    for one in sorted(streams, key=lambda one: one.came):
        before = column.setdefault(one.source, 0)
        gave.add(one.source)
        if one.target not in gave:
            column[one.target] = max(column.get(one.target, 0), before + 1)
    return column


def _through(streams: tuple[Stream, ...], left: Mapping[str, float]) -> dict[str, float]:
    into: dict[str, float] = {}
    out = {id: max(0.0, mg) for id, mg in left.items()}
    for one in streams:
        into[one.target] = into.get(one.target, 0.0) + one.mg
        out[one.source] = out.get(one.source, 0.0) + one.mg
    return {id: max(into.get(id, 0.0), out.get(id, 0.0)) for id in into | out}


def _nodes(column: Mapping[str, int], through: Mapping[str, float]) -> tuple[Node, ...]:
    found: list[Node] = []
    for number in range(max(column.values(), default=-1) + 1):
        here = sorted(
            (id for id, there in column.items() if there == number),
            key=lambda id: (id in SINKS, -through[id], id),
        )
        alone = [id for id in here if id in SINKS]
        wool = [id for id in here if id not in SINKS]
        if len(wool) > MOST_IN_A_COLUMN:
            kept, rest = wool[: MOST_IN_A_COLUMN - 1], tuple(wool[MOST_IN_A_COLUMN - 1 :])
        else:
            kept, rest = wool, ()
        found += [Node((id,), number, through[id]) for id in kept]
        found += [Node(rest, number, sum(through[id] for id in rest))] if rest else []
        found += [Node((id,), number, through[id]) for id in alone]
    return tuple(found)
