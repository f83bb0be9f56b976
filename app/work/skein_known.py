"""All that is known of one skein: what it holds, how thick it is, where it came from and goes."""

from dataclasses import dataclass

from app.book.book import Book
from app.book.event import Balance, Event
from app.book.fleece import Fleece
from app.book.gauge import Gauge
from app.book.holding import Holding
from app.book.plan import Plan
from app.book.reading import Reading
from app.book.words import OPEN_STATES, YARN_KINDS
from app.book.yarn import Yarn
from app.craft.fabric import firmness, firmness_by_wraps, firmness_word, loft_word
from app.craft.thickness import WRAPS_SHARE, wraps_from_tex
from app.craft.working import Step
from app.craft.yarn_class import class_sentence
from app.planning.answers import ShelfLine
from app.planning.supply import working
from app.planning.swatches import loop_at
from app.planning.turn import in_turn
from app.planning.yarns import Lots
from app.work.reckoning import Known
from app.work.skein_put_away import emptied_by, events_of
from app.work.skein_readings import unfinished


@dataclass(frozen=True, slots=True)
class Thickness:
    """Wraps per inch, and the reading they are from; None where they are expected from grist,
    give or take `u`."""

    wraps: float
    reading: Reading | None
    u: float


@dataclass(frozen=True, slots=True)
class FirmnessAt:
    """The fabric this yarn gives at a plan's gauge; `loft` is "loftier", "denser" or empty, and
    `yarn_class` the class in words, by grist and gauge."""

    plan: Plan
    gauge: Gauge
    k: float
    word: str
    loft: str
    yarn_class: str


@dataclass(frozen=True, slots=True)
class KnownSkein:
    """`tex` is that of the finished yarn, as expected where it is `unfinished`; it is None where
    length or weight is not known, and `yarn_class` then empty. `line` is None off the shelf or
    empty; `emptied` is the event that put it away."""

    skein: Holding
    balance: Balance
    tex: float | None
    line: ShelfLine | None
    yarn: Yarn | None
    fleece: Fleece | None
    unfinished: bool
    yarn_class: str
    thickness: Thickness | None
    firmness: tuple[FirmnessAt, ...]
    readings: tuple[Reading, ...]
    events: tuple[Event, ...]
    emptied: Event | None
    working: tuple[Step, ...]


def known_skein(known: Known, skein_id: str) -> KnownSkein | None:
    """All that is known of a skein; None where there is none of that id."""
    book = known.book
    skein = book.holding.get(skein_id)
    if skein is None or skein.kind not in YARN_KINDS:
        return None
    balance = book.balances.get(skein_id, Balance())
    readings = tuple(book.readings_of.get(skein_id, []))
    line, still_long = known.reckoning.shelf.get(skein_id), unfinished(readings)
    tex = _tex(balance, line if still_long else None)
    thickness = _thickness(readings, tex)
    return KnownSkein(
        skein=skein,
        balance=balance,
        tex=tex,
        line=line,
        yarn=book.yarn.get(skein.yarn_id or ""),
        fleece=book.fleece.get(skein.fleece_id or ""),
        unfinished=still_long,
        yarn_class=class_sentence(tex) if tex else "",
        thickness=thickness,
        firmness=_firmness(book, skein, line, tex, thickness),
        readings=readings,
        events=tuple(events_of(book, skein_id)),
        emptied=emptied_by(book, skein_id),
        working=working(book, skein_id) if line else (),
    )


def _tex(balance: Balance, expected: ShelfLine | None) -> float | None:
    """Linear density in tex, by the length `expected` after finishing where that is given."""
    metres = expected.held.value if expected else balance.mm / 1000
    return balance.mg / metres if balance.mg > 0 and metres > 0 else None


def _thickness(readings: tuple[Reading, ...], tex: float | None) -> Thickness | None:
    measured = [one for one in readings if one.kind == "wraps"]
    if measured:
        return Thickness(measured[-1].value / 1000, measured[-1], 0.0)
    if tex is None:
        return None
    wraps = wraps_from_tex(tex)
    return Thickness(wraps, None, wraps * WRAPS_SHARE)


def _firmness(
    book: Book,
    skein: Holding,
    line: ShelfLine | None,
    tex: float | None,
    thickness: Thickness | None,
) -> tuple[FirmnessAt, ...]:
    if tex is None:
        return ()
    promised = {held.plan_id for held in line.promised_to} if line else set()
    measured = thickness.wraps if thickness and thickness.reading else None
    plans = [one for one in in_turn(book.plans) if one.state in OPEN_STATES and one.gauge]
    meant = [one for one in plans if one.id in promised or meant_for(book, one, skein.yarn_id)]
    lots = Lots(book)
    return tuple(_at(plan, plan.gauge, lots, tex, measured) for plan in meant if plan.gauge)


def meant_for(book: Book, plan: Plan, yarn_id: str | None) -> bool:
    """True where a plan, or a part of it, is to be knit in a yarn."""
    of_parts = (role for part in book.parts_of.get(plan.id, []) for role in part.yarns)
    return yarn_id is not None and any(one.yarn_id == yarn_id for one in (*plan.yarns, *of_parts))


def _at(plan: Plan, gauge: Gauge, lots: Lots, tex: float, wraps: float | None) -> FirmnessAt:
    loop = loop_at(gauge, lots).value
    k = firmness(tex, loop)
    loft = loft_word(k, firmness_by_wraps(wraps, loop)) if wraps else ""
    yarn_class = class_sentence(tex, gauge.stitches)
    return FirmnessAt(plan, gauge, k, firmness_word(k), loft, yarn_class)
