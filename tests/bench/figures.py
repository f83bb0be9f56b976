"""A figure of the craft with its uncertainty, and the same with its working told."""

from collections.abc import Callable, Iterator
from pathlib import Path
from statistics import median
from time import perf_counter

from app.craft.fabric import loop_cm
from app.craft.loop_ways import by_gauge, loop_from
from tests.bench.row import Row

CALLS = 2000


def rows(_: Path, rounds: int) -> Iterator[Row]:
    """Microseconds of one call, a median of rounds taken in turn."""
    bare, told = _interleaved(rounds, _figure, _with_working)
    yield Row("a figure, without its working", bare, "µs", 5, note="yarn in a stitch, by gauge")
    yield Row("a figure, with its working", told, "µs", 50, note="the same, told step by step")


def _figure() -> object:
    return loop_cm(22, 30)


def _with_working() -> object:
    return loop_from(by_gauge(22, 30))


def _interleaved(rounds: int, *acts: Callable[[], object]) -> list[float]:
    found: list[list[float]] = [[] for _ in acts]
    for _ in range(rounds):
        for act, times in zip(acts, found, strict=True):
            begun = perf_counter()
            for _ in range(CALLS):
                act()
            times.append((perf_counter() - begun) / CALLS * 1e6)
    return [median(times) for times in found]
