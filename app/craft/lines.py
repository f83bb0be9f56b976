"""A straight line through what was measured: needle against gauge, say, by least squares."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import fsum, sqrt

from app.craft.figure import Figure

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Line:
    """y = intercept + slope·x, the best in y through `points` points around `middle`.

    `residual_sd` is the scatter of the points about it, None where two points leave none to see;
    `spread` is the sum of squares of x about its mean, `fitted_share` the share of the variation
    in y that the line explains (R²).
    """

    slope: float
    intercept: float
    residual_sd: float | None
    fitted_share: float
    points: int
    middle: Point
    spread: float

    @property
    def slope_u(self) -> float | None:
        """Standard uncertainty of the slope; None where no scatter was seen."""
        return None if self.residual_sd is None else self.residual_sd / sqrt(self.spread)

    @property
    def intercept_u(self) -> float | None:
        """Standard uncertainty of the intercept; None where no scatter was seen."""
        if self.residual_sd is None:
            return None
        return self.residual_sd * sqrt(1 / self.points + self.middle[0] ** 2 / self.spread)

    def y_at(self, x: float) -> float:
        """The height of the line at x."""
        return self.middle[1] + self.slope * (x - self.middle[0])

    def x_at(self, y: float) -> float:
        """Where the line has that height; ValueError for a level line."""
        if self.slope == 0:
            raise ValueError("the line is level: it does not tell one from another")
        return self.middle[0] + (y - self.middle[1]) / self.slope

    def ahead(self, x: float, unit: str, usual_sd: float) -> Figure:
        """What the next observation at x will be: the line, and the scatter of a single one.

        `usual_sd` is the scatter taken where two points show none. The further x lies from the
        middle of the points, the less sure it is.
        """
        sd = usual_sd if self.residual_sd is None else self.residual_sd
        away = (x - self.middle[0]) ** 2 / self.spread
        causes = {
            "scatter of one observation": sd,
            "the fitted line": sd * sqrt(1 / self.points + away),
        }
        return Figure(self.y_at(x), unit, causes)


def fitted_line(points: Sequence[Point]) -> Line:
    """The line of least squares in y through (x, y) points.

    ValueError for fewer than two different x. Sums are taken about the means, so that nothing is
    lost where the points lie far from the origin (checked on NIST StRD Norris).
    """
    if len({x for x, _ in points}) < 2:
        raise ValueError("a line needs observations at two different places at least")
    count = len(points)
    middle = (fsum(x for x, _ in points) / count, fsum(y for _, y in points) / count)
    across = [(x - middle[0], y - middle[1]) for x, y in points]
    spread = fsum(x * x for x, _ in across)
    slope = fsum(x * y for x, y in across) / spread
    left = fsum((y - slope * x) ** 2 for x, y in across)
    whole = fsum(y * y for _, y in across)
    return Line(
        slope,
        middle[1] - slope * middle[0],
        sqrt(left / (count - 2)) if count > 2 else None,
        1 - left / whole if whole else 1.0,
        count,
        middle,
        spread,
    )
