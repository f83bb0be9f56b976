"""Needle against gauge: what the swatches of one yarn say together, and which needle to try."""

from dataclasses import dataclass

from app.book.swatch import Swatch, gauge_of
from app.craft.figure import Figure
from app.craft.lines import Line, fitted_line
from app.craft.needle_choice import hand_from, needle_by_swatches, needle_for, sold_next_to
from app.craft.odds import normal_quantile
from app.craft.thickness import wraps_from_tex
from app.craft.working import Step
from app.planning.swatches import SwatchAnswer, measured_wraps
from app.planning.yarns import Lots


@dataclass(frozen=True, slots=True)
class Tried:
    """A swatch as a point: its needle in mm and its stitches in 10 cm."""

    swatch: Swatch
    needle_mm: float
    stitches: float


@dataclass(frozen=True, slots=True)
class NeedleLine:
    """Swatches of one yarn and pattern, all washed or none, thinnest needle first; `line` is None
    while they are on one needle only."""

    tried: tuple[Tried, ...]
    line: Line | None


@dataclass(frozen=True, slots=True)
class NeedleAsked:
    """The needle for so many stitches in 10 cm, in mm; None, and `why`, where there is no telling.

    `beyond` tells that it lies outside the needles that were tried; `sold` are the sizes beside it.
    """

    stitches: float
    needle: Figure | None
    beyond: bool
    why: str
    sold: tuple[float, ...]
    steps: tuple[Step, ...]

    @property
    def between(self) -> tuple[float, float]:
        """Where the needle lies 9 times in 10, in mm; nothing where there is no telling."""
        if self.needle is None:
            return 0.0, 0.0
        reach = normal_quantile(0.95) * self.needle.u
        return max(0.0, self.needle.value - reach), self.needle.value + reach


def needle_line(swatch: Swatch, lots: Lots) -> NeedleLine:
    """The swatch among the others that can be compared with it."""
    alike = (one for one in lots.book.swatches if _alike(one, swatch))
    points = [one for each in alike if (one := _tried(each))]
    tried = tuple(sorted(points, key=lambda one: (one.needle_mm, one.swatch.name)))
    several = len({one.needle_mm for one in tried}) > 1
    return NeedleLine(tried, fitted_line(_points(tried)) if several else None)


def needle_asked(
    stitches: float, swatch: Swatch, answer: SwatchAnswer, known: NeedleLine, lots: Lots
) -> NeedleAsked:
    """Which needle gives so many stitches in 10 cm: by the line through the swatches, or with one
    needle tried, by the hand this swatch shows."""
    try:
        if known.line:
            choice = needle_by_swatches(_points(known.tried), stitches)
        else:
            choice = needle_for(stitches, *_hand(swatch, answer, lots))
    except ValueError as untold:
        text = str(untold)
        return NeedleAsked(stitches, None, False, f"{text[:1].upper()}{text[1:]}.", (), ())
    sizes = [one.needle_mm for one in known.tried]
    beyond = bool(known.line) and not min(sizes) <= choice.needle.value <= max(sizes)
    sold = tuple(one.mm for one in sold_next_to(choice.needle.value))
    return NeedleAsked(stitches, choice.needle, beyond, "", sold, choice.steps)


def _alike(one: Swatch, swatch: Swatch) -> bool:
    if one.id == swatch.id:
        return True
    same_washed = (one.finished is None) == (swatch.finished is None)
    same_pattern = one.pattern.casefold() == swatch.pattern.casefold()
    return (
        swatch.yarn_id is not None
        and one.yarn_id == swatch.yarn_id
        and same_pattern
        and same_washed
    )


def _tried(swatch: Swatch) -> Tried | None:
    gauge = gauge_of(swatch)
    if gauge is None or swatch.needle_mm is None:
        return None
    return Tried(swatch, swatch.needle_mm, gauge.stitches)


def _points(tried: tuple[Tried, ...]) -> list[tuple[float, float]]:
    return [(one.needle_mm, one.stitches) for one in tried]


def _hand(
    swatch: Swatch, answer: SwatchAnswer, lots: Lots
) -> tuple[float, float, float, bool, float]:
    """Wraps, the knitter's hand, rows per stitch, washed, and how unsure the hand is."""
    gauge, found = answer.gauge, answer.found
    if gauge is None or found is None or swatch.needle_mm is None:
        raise ValueError("the swatch wants a count and its needle first")
    wraps = measured_wraps(swatch, lots)
    if wraps is None:
        if answer.tex is None:
            raise ValueError("the grist of its yarn is not known: knit a second swatch")
        wraps = wraps_from_tex(answer.tex.value)
    hand = hand_from(found.loop.value, swatch.needle_mm, wraps)
    share = found.loop.u / found.loop.value
    return wraps, hand, gauge.rows / gauge.stitches, gauge.washed, share
