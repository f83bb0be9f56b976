"""Needle against gauge as a small picture: a point a swatch, the line through them, its words."""

from dataclasses import dataclass

from app.craft.gauge import in_measure
from app.planning.needle_line import NeedleLine, Tried
from app.web.pages.gauge_said import measure_said, stitches_said
from app.web.shown import Shown

WIDTH, HEIGHT = 340.0, 190.0
LEFT, RIGHT, TOP, BOTTOM = 44.0, 12.0, 12.0, 38.0
"""The picture and the edges kept for the words at its axes, in its own units."""

LEAST_MM, LEAST_STITCHES = 1.0, 4.0
"""The axes span at least so much, lest a trifle look steep."""


@dataclass(frozen=True, slots=True)
class Mark:
    """A place on an axis and its word, or a swatch: `own` is the one the page is about."""

    x: float
    y: float
    words: str
    own: bool = False


@dataclass(frozen=True, slots=True)
class Plot:
    """Coordinates in units of the picture; `line` has two ends. `words` tell what it shows."""

    line: tuple[float, float, float, float]
    points: tuple[Mark, ...]
    needles: tuple[Mark, ...]
    gauges: tuple[Mark, ...]
    measure: str
    words: str


def swatch_plot(known: NeedleLine, own_id: str, shown: Shown) -> Plot | None:
    """The picture; None while there is no line to draw."""
    if known.line is None:
        return None
    frame = _frame(known)
    ends = [(mm, known.line.y_at(mm)) for mm in frame.needles]
    (x1, y1), (x2, y2) = (frame.at(*end) for end in ends)
    return Plot(
        line=(x1, y1, x2, y2),
        points=tuple(_point(one, frame, own_id, shown) for one in known.tried),
        needles=_needle_marks(known, frame, shown),
        gauges=_gauge_marks(frame, shown),
        measure=measure_said(shown),
        words=_words(known, shown),
    )


@dataclass(frozen=True, slots=True)
class _Frame:
    needles: tuple[float, float]
    stitches: tuple[float, float]

    def at(self, mm: float, stitches: float) -> tuple[float, float]:
        """Where a needle and its stitches in 10 cm lie."""
        across = (mm - self.needles[0]) / (self.needles[1] - self.needles[0])
        up = (stitches - self.stitches[0]) / (self.stitches[1] - self.stitches[0])
        x = LEFT + across * (WIDTH - LEFT - RIGHT)
        return round(x, 1), round(HEIGHT - BOTTOM - up * (HEIGHT - TOP - BOTTOM), 1)


def _frame(known: NeedleLine) -> _Frame:
    needles = _span([one.needle_mm for one in known.tried], LEAST_MM)
    fitted = [known.line.y_at(mm) for mm in needles] if known.line else []
    return _Frame(needles, _span([*fitted, *(one.stitches for one in known.tried)], LEAST_STITCHES))


def _span(values: list[float], least: float) -> tuple[float, float]:
    low, high = min(values), max(values)
    beside = max((high - low) * 0.12, (least - (high - low)) / 2)
    return low - beside, high + beside


def _point(one: Tried, frame: _Frame, own_id: str, shown: Shown) -> Mark:
    x, y = frame.at(one.needle_mm, one.stitches)
    return Mark(x, y, _told(one, shown), one.swatch.id == own_id)


def _needle_marks(known: NeedleLine, frame: _Frame, shown: Shown) -> tuple[Mark, ...]:
    sizes = sorted({one.needle_mm for one in known.tried})
    return tuple(
        Mark(frame.at(mm, frame.stitches[0])[0], HEIGHT - BOTTOM, shown.field_number(mm))
        for mm in sizes
    )


def _gauge_marks(frame: _Frame, shown: Shown) -> tuple[Mark, ...]:
    """Whole even numbers of stitches, a handful of them."""
    low, high = (in_measure(one, shown.settings.gauge_unit) for one in frame.stitches)
    step = max(2, 2 * round((high - low) / 8))
    whole = range(int(low // step + 1) * step, int(high) + 1, step)
    per_10cm = (high - low) / (frame.stitches[1] - frame.stitches[0])
    return tuple(Mark(LEFT, frame.at(0, one / per_10cm)[1], str(one)) for one in whole)


def _words(known: NeedleLine, shown: Shown) -> str:
    return "Needle against stitches: " + "; ".join(_told(one, shown) for one in known.tried)


def _told(one: Tried, shown: Shown) -> str:
    stitches = stitches_said(one.stitches, shown)
    return f"{shown.field_number(one.needle_mm)} mm, {stitches} stitches ({one.swatch.name})"
