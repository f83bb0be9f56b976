"""What is printed of sheep breeds; where sources disagree, each keeps its row."""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from typing import cast

from app.craft.counts import POUND_G
from app.craft.figure import Figure
from app.craft.tables import Row, table
from app.craft.working import Standing

INCH_MM = 25.4

UNKNOWN_YIELD = (62.0, 10.0)
"""Mean and standard uncertainty in percent where the breed says nothing (assumed)."""

LEAST_YIELD_U = 4.0
"""One fleece differs from its breed by at least so many points, however narrow the print
(assumed)."""

Range = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Breed:
    """One source on one breed. Ranges low to high, None where the source is silent: scoured yield
    in percent, fineness in micrometres, staple in mm, raw fleece in kg. `count` is the spinning
    count, empty where silent; `kind` the sort of sheep it speaks of."""

    name: str
    kind: str
    yield_pct: Range | None
    micron: Range | None
    staple_mm: Range | None
    fleece_kg: Range | None
    count: str
    standing: Standing
    source: str


@dataclass(frozen=True, slots=True)
class Typical:
    """What sources together say, over their whole range, and how far the weakest is to be
    trusted; `assumed` is the standing where none says anything."""

    figure: Figure
    standing: Standing
    sources: tuple[str, ...]


@cache
def all_rows() -> tuple[Breed, ...]:
    """Every row of the table, in its order."""
    return tuple(_breed(row) for row in table("breeds"))


def breed_names() -> list[str]:
    """Every breed once, in the alphabet."""
    return sorted({row.name for row in all_rows()})


def rows_of(breed: str) -> tuple[Breed, ...]:
    """What each source says of a breed, named in any letter case, or of the sort of sheep that
    goes by that name; empty for a breed that is not in the table."""
    wanted = " ".join(breed.casefold().split())
    return tuple(
        r for r in all_rows() if wanted and wanted in (r.name.casefold(), r.kind.casefold())
    )


def typical_yield(breed: str) -> Typical:
    """Scoured per skirted mass in percent: the middle of all sources' ranges ± half of the span.

    A breed no source has a yield of gets 62 ± 10 % (assumed).
    """
    rows = [row for row in rows_of(breed) if row.yield_pct]
    span = _span(row.yield_pct for row in rows)
    if span is None:
        return Typical(_yield_figure(*UNKNOWN_YIELD, breed), "assumed", ())
    middle, u = sum(span) / 2, max((span[1] - span[0]) / 2, LEAST_YIELD_U)
    standing: Standing = "memory" if any(r.standing == "memory" for r in rows) else "published"
    return Typical(_yield_figure(middle, u, breed), standing, tuple(r.source for r in rows))


def typical_micron(breed: str) -> Range | None:
    """Fineness in micrometres over all sources, low to high; None where all are silent."""
    return _span(row.micron for row in rows_of(breed))


def typical_staple(breed: str) -> Range | None:
    """Staple in mm over all sources, low to high; None where all are silent."""
    return _span(row.staple_mm for row in rows_of(breed))


def _yield_figure(percent: float, u: float, breed: str) -> Figure:
    return Figure(percent, "%", {f"yield of {breed.strip() or 'an unknown breed'}": u})


def _span(ranges: Iterable[Range | None]) -> Range | None:
    known = [one for one in ranges if one]
    return (min(low for low, _ in known), max(high for _, high in known)) if known else None


def _breed(row: Row) -> Breed:
    return Breed(
        row["breed"],
        row["kind"],
        _range(row, "yield_pct"),
        _range(row, "micron"),
        _range(row, "staple_in", INCH_MM),
        _range(row, "greasy_lb", POUND_G / 1000),
        row["count_s"],
        cast(Standing, row["standing"]),
        row["source"],
    )


def _range(row: Row, column: str, factor: float = 1.0) -> Range | None:
    low, high = row[f"{column}_low"], row[f"{column}_high"]
    return (float(low) * factor, float(high) * factor) if low and high else None
