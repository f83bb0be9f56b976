"""Wool that lies drying: its weighings in time, whether it is dry, and what it will weigh."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date

from app.book.book import Book
from app.book.holding import Holding
from app.book.reading import Reading
from app.book.weighed_as import drying_since, weighed_as
from app.craft.drying import LEAST_HOURS, Damp, agreed, dry_weight
from app.craft.figure import Figure
from app.craft.fleece import WATER, share_scoured
from app.planning.fleeces import fleece_yield, losses_for, wool_g
from app.planning.learning import learn

NOON = 12 * 60
"""The minute of a weighing that only the day is known of (assumed)."""

NOTHING_WASHED_OUT = 0.02
"""Standard uncertainty, as a share, of what clean wool weighs again after it was wetted: dye, loose
fibre, the air (assumed)."""


@dataclass(frozen=True, slots=True)
class Drying:
    """A holding that dries: its damp weighings, whether the last two agree, the percent lost
    between them (None before there are two), and the grams it will weigh when dry, with the grams
    it had before it was wetted, None where it came wet."""

    holding: Holding
    weighings: tuple[Damp, ...]
    dry: bool
    lost_pct: float | None
    expected: Figure
    before_g: float | None


def all_drying(book: Book) -> tuple[Drying, ...]:
    """Everything that lies drying, by its label."""
    lying = (one for one in book.holdings if one.state == "drying" and one.put_away is None)
    found = (drying(book, one) for one in sorted(lying, key=lambda one: (one.code, one.id)))
    return tuple(one for one in found if one)


def drying(book: Book, holding: Holding) -> Drying | None:
    """What is known of a holding that dries; None for one that does not, or that weighs nothing."""
    if holding.state != "drying":
        return None
    weighings = in_time(damp_weighings(book, holding))
    before = weighed_as(book, holding)
    known = _expected(book, holding, weighings)
    if known is None:
        return None
    return Drying(
        holding=holding,
        weighings=weighings,
        dry=agreed(weighings),
        lost_pct=_lost(weighings),
        expected=dry_weight(weighings, known) if weighings else known,
        before_g=None if before == "drying" else wool_g(book, [holding]),
    )


def damp_weighings(book: Book, holding: Holding) -> tuple[Reading, ...]:
    """The damp weighings of a holding since it was wetted last, in their order in time."""
    begun = drying_since(book, holding)
    found = (
        one
        for one in book.readings_of.get(holding.id, [])
        if one.kind == "mass" and one.wool == "damp" and one.value > 0
        if begun is None or one.day >= begun.day
    )
    return tuple(sorted(found, key=_when))


def in_time(readings: Iterable[Reading]) -> tuple[Damp, ...]:
    """Weighings in grams and hours, the first at zero. Of two on one day without their minutes the
    later one entered is taken to be an hour later."""
    found: list[Damp] = []
    first = 0.0
    for one in sorted(readings, key=_when):
        hours = one.day.toordinal() * 24 + _minute(one) / 60
        first = first if found else hours
        since = hours - first
        if found and since <= found[-1].hours and one.minute is None:
            since = found[-1].hours + LEAST_HOURS
        found.append(Damp(since, one.value / 1000))
    return tuple(found)


def _when(reading: Reading) -> tuple[date, int, str]:
    return reading.day, _minute(reading), reading.id


def _minute(reading: Reading) -> int:
    return NOON if reading.minute is None else reading.minute


def _expected(book: Book, holding: Holding, weighings: Sequence[Damp]) -> Figure | None:
    """Grams expected before any weighing told more: what was wetted, less what a wash takes; of
    wool that came wet its first weight, less the water that wet wool usually holds."""
    before = weighed_as(book, holding)
    now_g = wool_g(book, [holding])
    if before == "drying" or before is None:
        wet_g = weighings[0].g if weighings else now_g
        return Figure(wet_g, "g").times(Figure(1.0, "share") - WATER, "g") if wet_g > 0 else None
    if now_g <= 0:
        return None
    fleece = book.fleece.get(holding.fleece_id or "")
    kept = Figure(1.0, "share", {"what wetting changes": NOTHING_WASHED_OUT})
    if fleece:
        learnt = learn(book)
        losses = losses_for(before, book.settings.steps, learnt, fleece)
        share = fleece_yield(fleece, learnt)[0]
        kept = kept.times(share_scoured(before, share, losses), "share")
    return Figure(now_g, "g").times(kept, "g")


def _lost(weighings: Sequence[Damp]) -> float | None:
    if len(weighings) < 2:
        return None
    earlier, last = weighings[-2].g, weighings[-1].g
    return 100 * (earlier - last) / earlier
