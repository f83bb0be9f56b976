"""What was thought before anything was measured, and what is thought now, side by side."""

from dataclasses import dataclass
from typing import Literal

from app.book.book import Book
from app.craft.learning import Effect, Normal
from app.planning.learning.factors import FACTORS, PACE_NAME, factor_of, prior
from app.planning.learning.garments_seen import FACTOR_OF, PATTERN, PLACE
from app.planning.learning.learnt import Learnt
from app.planning.learning.observed import Names
from app.planning.learning.usual import PACES, SETTING, set_herself, usual_kept, usual_yield
from app.planning.needs_planned import STATED_MEDIAN

Unit = Literal[
    "share", "of the grist meant", "of what was planned", "of what is stated", "m/h", "g/h"
]
Range = tuple[float, float]

NAMED = {PLACE: "place", PATTERN: "pattern"}
"""Factors that are told of each place or stitch pattern alone, by the name of their level."""

SOURCED = {FACTOR_OF["stated"]: "source"}


@dataclass(frozen=True, slots=True)
class BeforeAfter:
    """A factor for one case: where the next batch lies 9 times in 10, `before` and `now`, in
    `unit`; learned from `seen` measurements. `whose` is the fleece or yarn, or any other of a
    breed; empty for any other of hers. `set_herself` tells that her setting stays in force."""

    factor: str
    words: str
    whose: str
    unit: Unit
    before: Range
    now: Range
    seen: int
    set_herself: bool = False


def before_after(learnt: Learnt) -> tuple[BeforeAfter, ...]:
    """Every factor of which something was measured, and each fleece or yarn it was measured of."""
    found = []
    for factor in (*FACTORS, *(PACE_NAME + one for one in learnt.paced())):
        if learnt.seen(factor):
            found += [
                _one(learnt, factor, Names(breed), whose) for breed, whose in _any(learnt, factor)
            ]
            found += [_one(learnt, factor, *case) for case in _cases(learnt, factor)]
    return tuple(found)


def _one(learnt: Learnt, factor: str, names: Names, whose: str) -> BeforeAfter:
    usual, unit = _usual(learnt.book, factor, names)
    batch = factor_of(factor).batch
    variance = sum(prior(one).sd ** 2 for one in names.effects(factor)) + batch**2
    now, before = learnt.times(factor, names), Normal(0.0, variance**0.5)
    return BeforeAfter(
        factor=factor,
        words=factor_of(factor).words,
        whose=whose,
        unit=unit,
        before=_range(usual, before, unit),
        now=_range(usual, now, unit),
        seen=learnt.seen(factor, names if whose else None),
        set_herself=set_herself(factor, learnt.book.settings),
    )


def _usual(book: Book, factor: str, names: Names) -> tuple[float, Unit]:
    if factor.startswith(PACE_NAME):
        pace = PACES[factor.removeprefix(PACE_NAME)]
        return pace.per_hour, "m/h" if pace.unit == "m" else "g/h"
    if factor == "scour":
        return usual_yield(names.breed), "share"
    if factor in SETTING:
        return usual_kept(factor, book.settings), "share"
    if factor == FACTOR_OF["stated"]:
        return STATED_MEDIAN, "of what is stated"
    return 1.0, "of the grist meant" if factor == "grist" else "of what was planned"


def _range(usual: float, normal: Normal, unit: Unit) -> Range:
    low, high = normal.factor_range()
    return usual * low, min(1.0, usual * high) if unit == "share" else usual * high


def _any(learnt: Learnt, factor: str) -> list[tuple[str, str]]:
    """What any other fleece or yarn of hers is called; of a yield, one of each breed."""
    if factor in NAMED:
        return []
    if factor != "scour":
        return [("", "")]
    told = (
        one.observation for one in learnt.told if one.counts and factor in one.observation.factors
    )
    breeds = sorted({one.names.breed for one in told})
    return [(one, f"any other {one}" if one else "any other of no breed known") for one in breeds]


def _cases(learnt: Learnt, factor: str) -> list[tuple[Names, str]]:
    """The fleeces or yarns a factor was measured of, by name; of a garment's, what it is told of
    beside the maker."""
    counting = [one.observation for one in learnt.told if one.counts]
    mine = [one for one in counting if factor in one.factors]
    if level := NAMED.get(factor) or SOURCED.get(factor):
        whose = {getattr(one.names, level) for one in mine}
        return [(Names(**{level: name}), name) for name in sorted(whose) if name]
    return _of_wool(learnt.book, factor, [one.names for one in mine])


def _of_wool(book: Book, factor: str, cases: list[Names]) -> list[tuple[Names, str]]:
    found = dict[tuple[Effect, ...], tuple[Names, str]]()
    of_fleece = "fleece" in factor_of(factor).levels
    for names in cases:
        fleece, yarn = book.fleece.get(names.fleece), book.yarn.get(names.yarn)
        record = fleece if of_fleece else yarn
        if record is not None:
            found.setdefault(names.effects(factor), (names, record.name))
    return sorted(found.values(), key=lambda one: (one[1].casefold(), str(one[0])))
