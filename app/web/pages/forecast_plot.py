"""A ball as a small picture: grams against rows, its weighings, the band ahead, the end of the
piece; and the same in words."""

from dataclasses import dataclass

from app.planning.knitting.ball_line import BallLine
from app.web.shown import Shown

WIDTH, HEIGHT = 340.0, 200.0
LEFT, RIGHT, TOP, BOTTOM = 52.0, 14.0, 24.0, 40.0
"""The picture and the edges kept for the words at its axes, in its own units."""

ROUND = (1.0, 2.0, 5.0, 10.0, 20.0, 25.0, 50.0, 100.0, 200.0, 500.0)


@dataclass(frozen=True, slots=True)
class Mark:
    """A place in the picture and its word."""

    x: float
    y: float
    words: str = ""


@dataclass(frozen=True, slots=True)
class BallPlot:
    """Coordinates in units of the picture: `band` and `line` are the points of a polygon and of a
    line, `end` where the piece ends."""

    band: str
    line: str
    points: tuple[Mark, ...]
    grams: tuple[Mark, ...]
    begun: Mark
    end: Mark
    words: str


@dataclass(frozen=True, slots=True)
class _Frame:
    far_x: float
    most_g: float

    def at(self, x: float, g: float) -> tuple[float, float]:
        """Where so many metres on and grams left lie."""
        across = x / self.far_x if self.far_x > 0 else 0.0
        up = g / self.most_g if self.most_g > 0 else 0.0
        return (
            round(LEFT + across * (WIDTH - LEFT - RIGHT), 1),
            round(HEIGHT - BOTTOM - up * (HEIGHT - TOP - BOTTOM), 1),
        )


def ball_plot(line: BallLine, code: str, shown: Shown) -> BallPlot:
    """The picture of one ball."""
    frame = _Frame(line.far_x, 1.05 * max(g for _, g in line.weighed))
    upper = [frame.at(one.x, one.most_g) for one in line.ahead]
    lower = [frame.at(one.x, one.least_g) for one in reversed(line.ahead)]
    return BallPlot(
        band=_points([*upper, *lower]),
        line=_points([frame.at(one.x, one.g) for one in line.ahead]),
        points=tuple(Mark(*frame.at(x, g), shown.mass(g)) for x, g in line.weighed),
        grams=tuple(_gram_marks(frame, shown)),
        begun=Mark(*frame.at(0.0, 0.0), f"row {line.begun.rows}" if line.begun else ""),
        end=Mark(*frame.at(line.end_x, 0.0), f"row {line.end.rows}"),
        words=_words(line, code, shown),
    )


def _gram_marks(frame: _Frame, shown: Shown) -> list[Mark]:
    """Round numbers of grams, a handful of them."""
    step = next((one for one in ROUND if frame.most_g / one <= 5), 1000.0)
    counts = range(int(frame.most_g / step) + 1)
    return [Mark(LEFT, frame.at(0.0, n * step)[1], shown.mass(n * step)) for n in counts]


def _points(places: list[tuple[float, float]]) -> str:
    return " ".join(f"{x:g},{y:g}" for x, y in places)


def _words(line: BallLine, code: str, shown: Shown) -> str:
    seen = ", ".join(shown.mass(g) for _, g in line.weighed)
    last = min(line.ahead, key=lambda one: abs(one.x - line.end_x))
    low, high = shown.mass(last.least_g), shown.mass(last.most_g)
    return f"{code} weighed {seen}; at the end of the piece {low} to {high} are left"
