"""Which size of a written pattern, at the gauge really got: every size against the body, the row
gauge and the shelf, and the one to cast on for."""

from collections.abc import Mapping
from dataclasses import dataclass

from app.book.book import Book
from app.book.gauge import Gauge
from app.book.pattern import Pattern, PatternSize, SizePart
from app.book.plan import Plan
from app.craft.pattern_gauge import Case, Recounted, yarn_factor
from app.craft.sizes import Measured
from app.planning.from_pattern import at_gauge, counted_parts, counts_of, stated_parts, uncounted
from app.planning.pattern_edges import place_in
from app.planning.pattern_fit import EaseRange, Fit, around, belied, fits
from app.planning.pattern_lengths import LengthFit, PieceAsKnit, length_fits
from app.planning.pattern_yarn import FreeShelf, SizeYarn, contradict

CLOSE = 0.01
"""A share of the body within which a size fits: no gauge is counted more closely (practice)."""


@dataclass(frozen=True, slots=True)
class SizeAnswer:
    """A size: how it fits (the tightest place first), its pieces, its lengths against the body's,
    its metres by counts and by the stated amount, and what the pattern leaves out or belies.

    `beyond` is how far it lies outside what was asked, as a share of the body; 0 where it fits.
    """

    size: PatternSize
    fits: tuple[Fit, ...]
    pieces: tuple[PieceAsKnit, ...]
    lengths: tuple[LengthFit, ...]
    counted: SizeYarn | None
    stated: SizeYarn | None
    contradicts: bool
    uncounted: tuple[str, ...]
    belied_cm: float | None
    beyond: float

    @property
    def whole(self) -> Fit:
        """The fit around the garment."""
        return next(one for one in self.fits if one.place not in ("upper arm", "wrist"))

    @property
    def tightest(self) -> Fit:
        return self.fits[0]

    @property
    def too_wide(self) -> bool:
        """True where it fits nobody closely enough, though no place is too tight."""
        return self.beyond > 0 and self.tightest.spare >= 0

    @property
    def yarn(self) -> SizeYarn | None:
        """By the counts where there are any."""
        return self.counted or self.stated


@dataclass(frozen=True, slots=True)
class WhichSize:
    """Every size in the order of the pattern, and the one to take. `factor` is what following the
    pattern so does to its metres."""

    pattern: Pattern
    case: Case
    own: Gauge
    around: str
    wanted: EaseRange
    factor: float
    sizes: tuple[SizeAnswer, ...]
    best: SizeAnswer


def which_size(
    book: Book,
    plan: Plan,
    pattern: Pattern,
    case: Case,
    known: Mapping[str, Measured],
    wanted: EaseRange,
) -> WhichSize:
    """The sizes of a pattern for a plan with a gauge, on the body `known`, with the ease wanted.

    ValueError for a plan without a gauge or a pattern without sizes.
    """
    if plan.gauge is None or not pattern.sizes:
        raise ValueError("a size is chosen by a gauge, among sizes")
    own, shelf = plan.gauge, FreeShelf(book, plan)
    sizes = tuple(_size(shelf, pattern, one, case, own, known, wanted) for one in pattern.sizes)
    return WhichSize(
        pattern=pattern,
        case=case,
        own=own,
        around=around(pattern),
        wanted=wanted,
        factor=yarn_factor(case, counts_of(pattern.gauge), counts_of(own)),
        sizes=sizes,
        best=min(sizes, key=lambda one: (one.beyond, _off(one, wanted))),
    )


def _size(
    shelf: FreeShelf,
    pattern: Pattern,
    size: PatternSize,
    case: Case,
    own: Gauge,
    known: Mapping[str, Measured],
    wanted: EaseRange,
) -> SizeAnswer:
    found = fits(pattern, size, case, own, known, wanted)
    counted = shelf.size_yarn(counted_parts(shelf.plan, pattern, size, own, case))
    stated = shelf.size_yarn(stated_parts(shelf.plan, pattern, size, own, case))
    pieces = _pieces(pattern, size, case, own)
    return SizeAnswer(
        size=size,
        fits=found,
        pieces=pieces,
        lengths=length_fits(pieces, known, own),
        counted=counted,
        stated=stated,
        contradicts=contradict(counted, stated),
        uncounted=uncounted(size),
        belied_cm=belied(pattern, size),
        beyond=_beyond(found, wanted),
    )


def _pieces(pattern: Pattern, size: PatternSize, case: Case, own: Gauge) -> tuple[PieceAsKnit, ...]:
    both = [(one, at_gauge(one, case, pattern, own)) for one in size.parts]
    return tuple(
        PieceAsKnit(one.name, place_in(one), one.copies, count, _length_cm(one, count, case, own))
        for one, count in both
        if count
    )


def _length_cm(one: SizePart, count: Recounted, case: Case, own: Gauge) -> float:
    """By the tape it is the printed length, not that of whole rows."""
    if one.length_mm is not None and case != "stitches and rows":
        return one.length_mm / 10
    return counts_of(own).along_cm(count.rows)


def _beyond(found: tuple[Fit, ...], wanted: EaseRange) -> float:
    """Tighter than the least at the tightest place, or wider around than the most."""
    whole = next(one for one in found if one.place not in ("upper arm", "wrist"))
    too_wide = (whole.ease_cm - wanted.high_cm) / whole.body.cm
    beyond = max(-found[0].spare, too_wide)
    return beyond if beyond > CLOSE else 0.0


def _off(one: SizeAnswer, wanted: EaseRange) -> float:
    return abs(one.whole.ease_cm - wanted.middle_cm)
