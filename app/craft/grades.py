"""Grades of wool by fineness: the USDA's spinning counts, and the older blood grades."""

from dataclasses import dataclass
from functools import cache
from typing import cast

from app.craft.domain import positive
from app.craft.tables import Row, table
from app.craft.working import Standing


@dataclass(frozen=True, slots=True)
class Grade:
    """A grade with its mean diameters in µm, low to high (None at an open end), the largest
    standard deviation in µm it may have (None where not printed) and its blood grade."""

    name: str
    micron_low: float | None
    micron_high: float | None
    most_sd: float | None
    blood: str
    standing: Standing
    source: str


@cache
def grades() -> tuple[Grade, ...]:
    """Every grade, finest first."""
    return tuple(_read(row) for row in table("wool_grades"))


def grade_of(micron: float, sd: float | None = None) -> Grade:
    """The grade of a wool by its mean diameter in µm; a spread `sd` larger than the grade allows
    puts it one grade lower (the USDA's rule, remembered). ValueError for zero or less.

    Limits are printed to 0.01 µm: a mean is rounded to that first.
    """
    mean = round(positive(micron, "the mean diameter in µm"), 2)
    all_of_them = grades()
    place = next(
        n for n, one in enumerate(all_of_them) if one.micron_high is None or mean <= one.micron_high
    )
    allowed = all_of_them[place].most_sd
    if sd is not None and allowed is not None and positive(sd, "a spread in µm") > allowed:
        return all_of_them[place + 1]
    return all_of_them[place]


def grade_named(name: str) -> Grade:
    """A grade by its count: "56s" or "56"; ValueError for one that is not in the table."""
    wanted = f"{name.strip().removesuffix('s')}s"
    for one in grades():
        if one.name == wanted:
            return one
    raise ValueError(f"no grade of wool is called {name!r}")


def _read(row: Row) -> Grade:
    return Grade(
        row["grade"],
        _number(row["micron_low"]),
        _number(row["micron_high"]),
        _number(row["most_sd"]),
        row["blood"],
        cast(Standing, row["standing"]),
        row["source"],
    )


def _number(text: str) -> float | None:
    return float(text) if text else None
