"""Every group that could still be in a better answer: with them all, choosing whole ones is proof.

A group that costs more than the gap beyond what its parts and skeins are worth is in no better
answer. Both choices, of parts and of skeins, go only where the rest can still be cheap enough.
"""

from collections.abc import Iterator
from itertools import islice
from typing import TYPE_CHECKING, Any

from app.planning.solve.pricing import Pricing, Worths
from app.planning.solve.problem import Group, Problem

if TYPE_CHECKING:
    from numpy.typing import NDArray


CELLS_A_GROUP = 50_000
"""Cells of tables that may be worked out for each group that may be listed."""


def groups_within(problem: Problem, worths: Worths, gap: float, most: int) -> list[Group] | None:
    """All groups whose reduced cost is at most `gap`, but for those that a skein less would serve
    as well; None where there are more than `most`, or where it takes too much work to tell."""
    found: list[Group] = []
    cells = 0
    for kind in range(len(problem.kinds)):
        parts, skeins = problem.parts_of(kind), problem.skeins_of(kind)
        if parts:
            pricing = Pricing(problem, kind, worths, parts, skeins)
            for parts in _parts_within(pricing, gap):
                cells += len(skeins) * (pricing.reach + 1)
                if cells > most * CELLS_A_GROUP:
                    return None
                found += islice(_groups_of(pricing, parts, gap), most + 1 - len(found))
                if len(found) > most:
                    return None
    return found


def _parts_within(pricing: Pricing, gap: float) -> Iterator[list[int]]:
    needs, costs = pricing.needs, pricing.part_costs
    ends = pricing.supply - pricing.problem.prices.join - pricing.problem.prices.cut
    return (one for one in cheap_choices(needs, costs, ends, gap) if one)


def _groups_of(pricing: Pricing, places: list[int], gap: float) -> Iterator[Group]:
    """The groups of some parts, told by their places."""
    prices = pricing.problem.prices
    length = sum(pricing.needs[place] for place in places)
    spent = sum(pricing.part_costs[place] for place in places) - prices.join - prices.cut
    parts = tuple(pricing.part_ids[place] for place in places)
    for skeins in _skeins_within(pricing, length, gap - spent):
        yield Group(pricing.kind, parts, skeins)


def _skeins_within(pricing: Pricing, length: int, gap: float) -> Iterator[tuple[int, ...]]:
    metres, costs = pricing.metres, pricing.skein_costs
    ends = pricing.beyond(length)
    for places in cheap_choices(metres, costs, ends, gap):
        held = sum(metres[place] for place in places)
        needed = held - length < max((metres[place] for place in places), default=1)
        if needed and not any(ends[held - metres[place]] <= ends[held] for place in places):
            yield tuple(pricing.skein_ids[place] for place in places)


def cheap_choices(
    sizes: list[int], costs: list[float], ends: "NDArray[Any]", gap: float
) -> Iterator[list[int]]:
    """Choices of pieces whose costs with `ends` at their joint length are at most `gap`."""
    least = _least_to_go(sizes, costs, ends)
    heap: list[tuple[int, int, float, list[int]]] = [(0, 0, 0.0, [])]
    while heap:
        place, length, cost, chosen = heap.pop()
        if cost + least[place][length] > gap + 1e-9:
            continue
        if place == len(sizes):
            yield chosen
            continue
        heap.append((place + 1, length, cost, chosen))
        longer = length + sizes[place]
        if longer < len(ends):
            heap.append((place + 1, longer, cost + costs[place], [*chosen, place]))


def _least_to_go(
    sizes: list[int], costs: list[float], ends: "NDArray[Any]"
) -> list["NDArray[Any]"]:
    """For each piece and length so far, the least that this piece, those after it and the end can
    add."""
    import numpy as np

    found = [ends]
    for size, cost in zip(reversed(sizes), reversed(costs), strict=True):
        after = found[-1]
        with_it = np.full(len(after), np.inf)
        with_it[: max(0, len(after) - size)] = after[size:] + cost
        found.append(np.minimum(after, with_it))
    return found[::-1]
