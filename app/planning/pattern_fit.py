"""How the sizes of a written pattern fit somebody at the gauge really got, tightest place first."""

import re
from collections.abc import Mapping
from dataclasses import dataclass

from app.book.gauge import Gauge
from app.book.pattern import Pattern, PatternSize, SizePart
from app.book.words import Place
from app.craft.constructions.ease import ease_by_part
from app.craft.pattern_gauge import Case, width_factor
from app.craft.sizes import Ease, Measured, body
from app.planning.from_pattern import at_gauge, counts_of
from app.planning.pattern_edges import place_in

AROUND: tuple[tuple[str, str], ...] = (
    ("socks?|stockings?", "foot"),
    ("mittens?|gloves?|mitts?", "hand"),
    ("crown|hats?", "head"),
)
"""What a garment is called, and the measure its width is to go around; else the chest."""

HALF_STEP_CM = 2.5
"""Half the step from one printed size to the next: no size can be asked for more nearly."""

SMALL_STEP = 0.04
"""The same for heads, hands and feet, as a share of them."""

ARM_NEEDS_CM = 5.0
"""Ease around the chest from which a looser garment needs no looser sleeve (practice)."""

AGREE = 0.05
"""How far the stitches of a size may lie from its printed width and still stand for it."""


@dataclass(frozen=True, slots=True)
class EaseRange:
    """The ease asked for around the garment, in cm."""

    low_cm: float
    high_cm: float

    @property
    def middle_cm(self) -> float:
        return (self.low_cm + self.high_cm) / 2


@dataclass(frozen=True, slots=True)
class Fit:
    """A place of the body, the garment there, and the least ease it is to have, in cm."""

    place: str
    body: Measured
    garment_cm: float
    least_cm: float

    @property
    def ease_cm(self) -> float:
        return self.garment_cm - self.body.cm

    @property
    def spare(self) -> float:
        """Ease beyond the least, as a share of the body: the smallest is the tightest place."""
        return (self.ease_cm - self.least_cm) / self.body.cm


def around(pattern: Pattern) -> str:
    """The measure of the body that the widths of a pattern go around."""
    names = [pattern.name, *(part.name for size in pattern.sizes for part in size.parts)]
    for words, measure in AROUND:
        if any(re.search(rf"\b(?:{words})\b", name, re.IGNORECASE) for name in names):
            return measure
    return "chest"


def wearer(own: Mapping[str, float]) -> dict[str, Measured]:
    """What is known of a body from the measures taken, in cm by name; the chest tells the rest.

    ValueError for a chest below 30 or above 180 cm, or a measure that is not above zero.
    """
    if "chest" in own:
        return body(own["chest"], own)
    return {name: Measured(cm, 0.0, "measured") for name, cm in own.items()}


def ease_range(measure: str, known: Mapping[str, Measured], chart: Ease | float) -> EaseRange:
    """The ease asked for: a chart's, or one in cm; at least as wide as half a size either way.
    Heads, hands and feet have an ease of their own, whatever is asked of a chest."""
    if measure != "chest":
        cm = known[measure].cm
        usual = ease_by_part(0.0, {measure: cm}, {})[measure]
        return EaseRange(usual - SMALL_STEP * cm, usual + SMALL_STEP * cm)
    low, high = (chart, chart) if isinstance(chart, float) else (chart.low_cm, chart.high_cm)
    wider = max(0.0, HALF_STEP_CM - (high - low) / 2)
    return EaseRange(low - wider, high + wider)


def width_cm(pattern: Pattern, size: PatternSize, case: Case, own: Gauge) -> float:
    """How wide a size comes out, all around: its stitches by the own gauge. The printed width is
    carried over where the stitches are not given, or belie it."""
    trunk = _trunk(pattern, size)
    if trunk and belied(pattern, size) is None:
        found = [(one, at_gauge(one, case, pattern, own)) for one in trunk]
        stitches = sum(one.copies * piece.widest for one, piece in found if piece)
        return counts_of(own).across_cm(stitches)
    factor = width_factor(case, counts_of(pattern.gauge), counts_of(own))
    return size.width_mm / 10 * factor


def belied(pattern: Pattern, size: PatternSize) -> float | None:
    """The width in cm that the stitches of a size make at the pattern's own gauge, where it lies
    more than 5 % from the printed one; else None."""
    trunk = _trunk(pattern, size)
    pieces = [(one, at_gauge(one, "stitches", pattern, pattern.gauge)) for one in trunk]
    stitches = sum(one.copies * piece.widest for one, piece in pieces if piece)
    cm = counts_of(pattern.gauge).across_cm(stitches)
    printed = size.width_mm / 10
    return cm if trunk and abs(cm - printed) > AGREE * printed else None


def fits(
    pattern: Pattern,
    size: PatternSize,
    case: Case,
    own: Gauge,
    known: Mapping[str, Measured],
    wanted: EaseRange,
) -> tuple[Fit, ...]:
    """Each place of the body that a size tells of, the tightest first."""
    measure = around(pattern)
    found = [Fit(measure, known[measure], width_cm(pattern, size, case, own), wanted.low_cm)]
    if measure == "chest":
        found += _arms(pattern, size, case, own, known, wanted)
    return tuple(sorted(found, key=lambda one: one.spare))


def _arms(
    pattern: Pattern,
    size: PatternSize,
    case: Case,
    own: Gauge,
    known: Mapping[str, Measured],
    wanted: EaseRange,
) -> list[Fit]:
    """A sleeve at its widest goes around the upper arm, at its narrowest around the wrist."""
    pieces = [at_gauge(one, case, pattern, own) for one in size.parts if place_in(one) == "sleeve"]
    loose = min(wanted.low_cm, ARM_NEEDS_CM)
    arm = ease_by_part(loose, {"upper arm": known["upper arm"].cm}, {})["upper arm"]
    across = counts_of(own).across_cm
    return [
        fit
        for piece in pieces
        if piece
        for fit in (
            Fit("upper arm", known["upper arm"], across(piece.widest), arm),
            Fit("wrist", known["wrist"], across(piece.narrowest), 0.0),
        )
    ]


def _trunk(pattern: Pattern, size: PatternSize) -> list[SizePart]:
    """The parts that go around the body together; none where they cannot all be counted."""
    by_place: dict[Place, list[SizePart]] = {}
    for one in size.parts:
        by_place.setdefault(place_in(one), []).append(one)
    whole = by_place.get("body", [])[:1] or by_place.get("crown", [])[:1]
    flat = [*by_place.get("back", []), *by_place.get("front", [])]
    trunk = whole or (flat if {"back", "front"} <= by_place.keys() else [])
    counted = all(at_gauge(one, "stitches", pattern, pattern.gauge) for one in trunk)
    return trunk if counted else []
