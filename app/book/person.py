"""Someone to knit for."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Measure:
    """A body measurement in mm, by its name in the body table ("chest", "upper arm" …)."""

    name: str
    mm: int


@dataclass(frozen=True, slots=True)
class Person:
    id: str
    name: str
    measures: tuple[Measure, ...] = ()
    notes: str = ""
