"""Stitch patterns: what each does to the gauge and what it takes beyond the stitches themselves.

A purl takes what a knit stitch takes, so the yarn is stitches × loop of the needle worked; what
changes is how many stitches and rows fill an area. Nothing in print says by how much for garter or
rib, so a pattern takes its own measured gauge, and until there is one that of stocking stitch with
a wide error.
"""

from dataclasses import dataclass
from functools import cache
from math import sqrt
from typing import cast

from app.craft.domain import not_negative, positive
from app.craft.fabric import yarn_in
from app.craft.figure import Figure
from app.craft.tables import Row, table
from app.craft.working import Standing, Step

UNKNOWN_AREA_U = 0.30
"""How far the area of a pattern no table names may lie from plain knit, as a share (assumed)."""


@dataclass(frozen=True, slots=True)
class StitchPattern:
    """A pattern: stitches it repeats over and those added once (None where it depends); whether it
    wants a gauge of its own; how unsure its area is by the gauge of stocking stitch; the share of
    yarn it takes beyond its stitches, and how unsure that is."""

    name: str
    multiple: int | None
    plus: int | None
    own_gauge: bool
    area_u: float
    extra: float
    extra_u: float
    note: str
    standing: Standing
    source: str


@cache
def patterns() -> tuple[StitchPattern, ...]:
    """Every pattern of the table."""
    return tuple(_read(row) for row in table("patterns"))


def pattern_of(name: str) -> StitchPattern:
    """The pattern of that name, in any letter case; ValueError for one the table lacks."""
    wanted = " ".join(name.casefold().split())
    for one in patterns():
        if one.name.casefold() == wanted:
            return one
    raise ValueError(f"no stitch pattern is called {name!r}")


def known_or_unsure(name: str) -> StitchPattern:
    """The same, but for a name the table lacks a pattern of which nothing is known, and so as
    unsure as that."""
    try:
        return pattern_of(name)
    except ValueError:
        lacks = "no table names this pattern"
        return StitchPattern(name, None, None, True, UNKNOWN_AREA_U, 0, 0, "", "assumed", lacks)


def gauge_until_measured(
    pattern: StitchPattern, stitches_per_10cm: float, rows_per_10cm: float
) -> tuple[Figure, Figure]:
    """Stitches and rows in 10 cm of a pattern that has no swatch yet: those of stocking stitch,
    with the pattern's width of error. ValueError for a gauge that is not above zero."""
    each = pattern.area_u / sqrt(2)
    stitches = positive(stitches_per_10cm, "stitches in 10 cm")
    rows = positive(rows_per_10cm, "rows in 10 cm")
    return (
        Figure(stitches, "st/10 cm", {f"no swatch of {pattern.name}, width": stitches * each}),
        Figure(rows, "rows/10 cm", {f"no swatch of {pattern.name}, length": rows * each}),
    )


def yarn_in_pattern(pattern: StitchPattern, stitches: float, loop: Figure) -> Figure:
    """Metres of yarn in so many stitches of a pattern, extras with it, from a loop in cm."""
    plain = yarn_in(stitches, loop)
    extra = Figure(1 + pattern.extra, "times", {f"extras of {pattern.name}": pattern.extra_u})
    return plain.times(extra, "m")


def pattern_step(pattern: StitchPattern, stitches: float, loop: Figure) -> Step:
    """The working of `yarn_in_pattern`."""
    found = yarn_in_pattern(pattern, stitches, loop)
    how = f"{stitches:g} × {loop.value:.4g} cm ÷ 100"
    how += f" × {1 + pattern.extra:g}" if pattern.extra else ""
    what = f"Yarn in {pattern.name}"
    return Step(what, how, found.value, "m", found.u, pattern.source, pattern.standing)


def float_length(stitches_per_10cm: float, passed: float) -> float:
    """Metres of a float behind so many stitches: their width. ValueError for no gauge."""
    wide = 10 / positive(stitches_per_10cm, "stitches in 10 cm")
    return not_negative(passed, "the stitches passed") * wide / 100


def _read(row: Row) -> StitchPattern:
    return StitchPattern(
        row["name"],
        int(row["multiple"]) if row["multiple"] else None,
        int(row["plus"]) if row["plus"] else None,
        bool(row["own_gauge"]),
        float(row["area_u_pct"]) / 100,
        float(row["extra_pct"]) / 100,
        float(row["extra_u_pct"]) / 100,
        row["note"],
        cast(Standing, row["standing"]),
        row["source"],
    )
