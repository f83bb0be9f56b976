"""A figure: a number with a unit and the reasons why it is unsure.

The idea is that of the GUM (JCGM 100:2008, 5.1): to first order an uncertainty is a sum over its
sources of sensitivity times standard uncertainty. Each source keeps its name and its sign, so an
error shared by two figures (one reel, one gauge, one hand) stays shared when they are added or
compared, and "why so unsure?" is answered by reading the largest contribution.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from math import hypot


class UnitMismatch(ValueError):
    """Figures of unlike units were added or compared, or one came in another unit than asked."""


@dataclass(frozen=True, slots=True)
class Figure:
    """`value` in `unit`; `causes` maps a source of error to its signed contribution in `unit`."""

    value: float
    unit: str
    causes: Mapping[str, float] = field(default_factory=dict)

    @property
    def u(self) -> float:
        """The standard uncertainty, in the figure's unit."""
        return hypot(*self.causes.values()) if self.causes else 0.0

    @property
    def chief_cause(self) -> str:
        """The source that contributes most, or an empty string for an exact figure."""
        return max(self.causes, key=lambda name: abs(self.causes[name]), default="")

    def __add__(self, other: "Figure") -> "Figure":
        self._check(other)
        return Figure(self.value + other.value, self.unit, _joined(self.causes, other.causes, 1.0))

    def __sub__(self, other: "Figure") -> "Figure":
        self._check(other)
        return Figure(self.value - other.value, self.unit, _joined(self.causes, other.causes, -1.0))

    def scaled(self, factor: float, unit: str | None = None) -> "Figure":
        """The figure times an exact number, in `unit` if that changes it."""
        causes = {name: part * factor for name, part in self.causes.items()}
        return Figure(self.value * factor, unit or self.unit, causes)

    def times(self, other: "Figure", unit: str) -> "Figure":
        """The product of two figures, in `unit`."""
        return _combined(self, other, self.value * other.value, unit, other.value, self.value)

    def per(self, other: "Figure", unit: str) -> "Figure":
        """The quotient of two figures, in `unit`; ZeroDivisionError for a divisor of zero."""
        quotient = self.value / other.value
        return _combined(self, other, quotient, unit, 1 / other.value, -quotient / other.value)

    def given_in(self, unit: str) -> "Figure":
        """The figure itself, if it is in that unit; UnitMismatch otherwise, for nothing is ever
        guessed from a number."""
        if self.unit != unit:
            raise UnitMismatch(f"a figure in {unit} is wanted, not in {self.unit}")
        return self

    def unsure(self, cause: str, u: float) -> "Figure":
        """The same figure with a further independent contribution of `u` in its own unit."""
        return Figure(self.value, self.unit, _joined(self.causes, {cause: u}, 1.0))

    def covariance(self, other: "Figure") -> float:
        """What the two figures have in common, in the product of their units."""
        return sum(part * other.causes.get(name, 0.0) for name, part in self.causes.items())

    def _check(self, other: "Figure") -> None:
        if self.unit != other.unit:
            raise UnitMismatch(f"{self.unit} and {other.unit} cannot be added")


def total(figures: Iterable[Figure], unit: str) -> Figure:
    """The sum of figures of one unit; an exact zero for none."""
    result = Figure(0.0, unit)
    for one in figures:
        result = result + one
    return result


def _joined(left: Mapping[str, float], right: Mapping[str, float], sign: float) -> dict[str, float]:
    joined = dict(left)
    for name, part in right.items():
        joined[name] = joined.get(name, 0.0) + sign * part
    return joined


def _combined(
    left: Figure, right: Figure, value: float, unit: str, by_left: float, by_right: float
) -> Figure:
    first, second = left.scaled(by_left), right.scaled(by_right)
    return Figure(value, unit, _joined(first.causes, second.causes, 1.0))
