"""What a number may be: a fault for each that lies beyond its bounds."""

from collections.abc import Iterator
from typing import Any

Fault = tuple[Any, str, str]
"""A record, its field, and what is wrong."""

ABOVE_ZERO = "must be more than zero."
NOT_BELOW_ZERO = "must not be below zero."
PERCENT = "must lie between 0 and 100 percent."
INSIDE = "must be more than 0 and less than 100 percent."
NOT_ALL = "must be at least 0 and less than 100 percent."


def above_zero(record: Any, field: str, value: float | None) -> Iterator[Fault]:
    if value is not None and value <= 0:
        yield record, field, ABOVE_ZERO


def not_below(record: Any, field: str, value: float | None) -> Iterator[Fault]:
    if value is not None and value < 0:
        yield record, field, NOT_BELOW_ZERO


def within(
    record: Any, field: str, value: float | None, bounds: tuple[float, float]
) -> Iterator[Fault]:
    least, most = bounds
    if value is not None and not least <= value <= most:
        yield record, field, f"must lie between {least:g} and {most:,.0f}."


def inside(record: Any, field: str, value: float | None) -> Iterator[Fault]:
    if value is not None and not 0 < value < 100:
        yield record, field, INSIDE


def not_all(record: Any, field: str, value: float) -> Iterator[Fault]:
    if not 0 <= value < 100:
        yield record, field, NOT_ALL


def percent(record: Any, field: str, value: float | None) -> Iterator[Fault]:
    if value is not None and not 0 <= value <= 100:
        yield record, field, PERCENT
