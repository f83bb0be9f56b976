"""The small sums of the trade, worked from a plan's own numbers."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from app.book.book import Book
from app.book.gauge import Gauge
from app.book.plan import Part, Plan
from app.book.shape import Run
from app.craft.constructions.drawing import nearest
from app.craft.patterns import pattern_of, patterns
from app.craft.shaping import button_places, multiples_near, pick_up, shaping_text
from app.planning.needs import needs_of
from app.planning.places import in_round, place_of
from app.planning.schedule import schedule
from app.planning.yarns import Lots

BETWEEN_CM = 8.0
"""About how far apart buttons sit on a front where nobody said (practice)."""

HOLE, FROM_END = 3, 4
"""Stitches or rows of a buttonhole, and from either end of the band to the first (practice)."""

BORDER = "2×2 rib"
FRONT_BAND = re.compile(r"\b(front|button) ?bands?\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Asked:
    """What a maker asks: buttons (None: as many as are usual), the stitches or rows of a hole and
    of either end, the pattern of a border, and a part to be brought to so many stitches."""

    buttons: int | None = None
    hole: int = HOLE
    end: int = FROM_END
    border: str = BORDER
    part_id: str = ""
    stitches_to: int | None = None


@dataclass(frozen=True, slots=True)
class Laid:
    """A part as it is worked."""

    part: Part
    gauge: Gauge
    runs: tuple[Run, ...]

    @property
    def rows(self) -> int:
        return sum(run.rows for run in self.runs)

    @property
    def first(self) -> int:
        return self.runs[0].stitches


@dataclass(frozen=True, slots=True)
class Buttons:
    """Buttonholes on a band of `count` stitches (or rows, if it is knit along its length): `holes`
    is the stitch each begins after, `between` those from one to the next, `gap_mm` their width."""

    part: str
    count: int
    unit: str
    holes: tuple[int, ...]
    between: tuple[int, ...]
    gap_mm: float


@dataclass(frozen=True, slots=True)
class PickUp:
    """Stitches to pick up along the row ends of a part: in turn so many in so many rows; empty
    where every row gives one."""

    part: str
    rows: int
    stitches: int
    turn: tuple[tuple[int, int], ...]


@dataclass(frozen=True, slots=True)
class Fits:
    """The counts nearest to a part's first row that a border repeats over."""

    part: str
    stitches: int
    below: int
    above: int


@dataclass(frozen=True, slots=True)
class SmallSums:
    """All of them; `refused` says why there are no buttonholes or no shaping, by field."""

    asked: Asked
    buttons: tuple[Buttons, ...]
    picked_up: tuple[PickUp, ...]
    fits: tuple[Fits, ...]
    shaped: str
    refused: dict[str, str]

    @property
    def any(self) -> bool:
        """Whether the plan has numbers to work from."""
        return bool(self.fits)


def borders() -> tuple[str, ...]:
    """The stitch patterns a border can be fitted to."""
    return tuple(one.name for one in patterns() if (one.multiple or 1) > 1)


def small_sums(book: Book, plan: Plan, asked: Asked) -> SmallSums:
    """The small sums of a plan. Where buttonholes do not fit, or shaping does not, `refused` says
    so in words. ValueError for a border no table has."""
    laid = tuple(_laid(book, plan))
    refused: dict[str, str] = {}
    return SmallSums(
        asked=asked,
        buttons=_buttons(laid, asked, refused),
        picked_up=tuple(_pick_up(one) for one in laid if _has_row_ends(one.part)),
        fits=tuple(_fits(one, asked.border) for one in laid if place_of(one.part) != "band"),
        shaped=_shaped(laid, asked, refused),
        refused=refused,
    )


def _laid(book: Book, plan: Plan) -> Iterator[Laid]:
    for need in needs_of(plan, book.parts_of.get(plan.id, []), Lots(book)):
        if need.gauge is None:
            continue
        runs = schedule(need.part.shape, need.gauge, need.part.worked)
        if runs:
            yield Laid(need.part, need.gauge, tuple(runs))


def _has_row_ends(part: Part) -> bool:
    return not in_round(part) and place_of(part) not in ("band", "cuff", "neck", "crown")


def _buttons(laid: tuple[Laid, ...], asked: Asked, refused: dict[str, str]) -> tuple[Buttons, ...]:
    found = []
    for band in laid:
        if not FRONT_BAND.search(band.part.name):
            continue
        try:
            found.append(_on_band(band, asked))
        except ValueError:
            refused["buttons"] = f"So many buttonholes do not fit on the {band.part.name}."
    return tuple(found)


def _on_band(band: Laid, asked: Asked) -> Buttons:
    """A band that was picked up is as long as its stitches, one knit by itself as its rows."""
    along = band.first >= band.rows
    count = band.first if along else band.rows
    mm = 100 / (band.gauge.stitches if along else band.gauge.rows)
    buttons = asked.buttons or max(nearest(count * mm / 10 / BETWEEN_CM) + 1, 2)
    holes = tuple(nearest(one) for one in button_places(count, buttons, asked.hole, asked.end))
    between = tuple(b - a - asked.hole for a, b in pairwise(holes))
    gap = sum(between) / len(between) * mm if between else 0.0
    return Buttons(band.part.name, count, "stitches" if along else "rows", holes, between, gap)


def _pick_up(one: Laid) -> PickUp:
    gauge = one.gauge
    try:
        turn = pick_up(gauge.stitches, gauge.rows)
    except ValueError:
        turn = ()
    return PickUp(one.part.name, one.rows, nearest(one.rows * gauge.stitches / gauge.rows), turn)


def _fits(one: Laid, border: str) -> Fits:
    pattern = pattern_of(border)
    plus = 0 if in_round(one.part) else pattern.plus or 0
    below, above = multiples_near(one.first, pattern.multiple or 1, plus)
    return Fits(one.part.name, one.first, below, above)


def _shaped(laid: tuple[Laid, ...], asked: Asked, refused: dict[str, str]) -> str:
    """A part's first run brought to so many stitches instead, in words; empty if not asked."""
    part = next((one for one in laid if one.part.id == asked.part_id), None)
    if part is None or asked.stitches_to is None:
        return ""
    run = part.runs[0]
    if abs(asked.stitches_to - run.stitches) > 2 * run.rows:
        refused["to"] = f"That is more than one stitch at each end of its {run.rows} rows."
        return ""
    return shaping_text(run.rows, run.stitches, asked.stitches_to, in_round(part.part))
