"""The gauge a garment and its parts are knit to, and the swatch each was taken from."""

from dataclasses import dataclass

from app.book.book import Book
from app.book.gauge import Gauge
from app.book.plan import Plan
from app.book.swatch import gauge_of
from app.web.pages.gauge_said import gauge_said
from app.web.shown import Shown


@dataclass(frozen=True, slots=True)
class GaugeLine:
    """`what` is a part, or empty for the whole garment; `swatch` is the name of the swatch it was
    taken from, `now` what that says by now where that is something else."""

    what: str
    gauge: str
    swatch: str
    url: str
    now: str


def gauge_lines(plan: Plan, book: Book, shown: Shown) -> tuple[GaugeLine, ...]:
    """The garment's gauge first, then those of parts that have one of their own."""
    own = [(part.name, part.gauge) for part in book.parts_of.get(plan.id, [])]
    both = [("", plan.gauge), *own]
    return tuple(_line(what, gauge, book, shown) for what, gauge in both if gauge)


def _line(what: str, gauge: Gauge, book: Book, shown: Shown) -> GaugeLine:
    swatch = book.swatch.get(gauge.swatch_id or "")
    if swatch is None:
        return GaugeLine(what, gauge_said(gauge, shown), "", "", "")
    now = gauge_of(swatch)
    other = gauge_said(now, shown) if now and now != gauge else ""
    return GaugeLine(what, gauge_said(gauge, shown), swatch.name, f"/swatches/{swatch.id}", other)
