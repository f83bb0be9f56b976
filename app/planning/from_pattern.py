"""From a size of a written pattern to the parts of a plan: by its counts, or by what it states."""

from app.book.gauge import Gauge
from app.book.pattern import Pattern, PatternSize, SizePart
from app.book.plan import Part, Plan
from app.book.shape import Run, Runs, Stated
from app.book.words import Place
from app.craft.garments import MODEL_SHARE
from app.craft.pattern_gauge import USUAL, Case, Counts, Printed, Recounted, recounted, yarn_factor
from app.planning.design import part_id
from app.planning.pattern_edges import edges_in, is_tube, place_in

WHOLE = "Whole garment"
"""The one part of a size that names none."""

USUAL_SHARES: dict[Place, float] = {
    "": 25.0,
    "body": 48.0,
    "back": 31.0,
    "front": 31.0,
    "sleeve": 34.0,
    "yoke": 18.0,
    "neck": 3.0,
    "band": 5.0,
    "cuff": 4.0,
    "crown": 30.0,
    "piece": 25.0,
}
"""What a place takes beside the others, all its copies together (practice)."""

SHARE_U_PCT = 20.0
"""Standard uncertainty of a part's share of a stated total, in percent of it (assumed)."""


def case_of(plan: Plan) -> Case:
    """What a plan keeps of its pattern; where nobody said, its stitches."""
    return plan.follows or USUAL


def counts_of(gauge: Gauge) -> Counts:
    """The gauge as the craft reckons with it."""
    return Counts(gauge.stitches, gauge.rows)


def at_gauge(part: SizePart, case: Case, pattern: Pattern, own: Gauge) -> Recounted | None:
    """A piece of a size at the own gauge; None where the pattern does not say enough of it."""
    length = None if part.length_mm is None else part.length_mm / 10
    piece = Printed(part.cast_on, part.widest, part.rows, length)
    return recounted(case, piece, counts_of(pattern.gauge), counts_of(own))


def uncounted(size: PatternSize) -> tuple[str, ...]:
    """The parts of a size without stitches, or with neither rows nor length."""
    same = Gauge(20.0, 30.0)
    whole = Pattern("", "", same)
    return tuple(one.name for one in size.parts if at_gauge(one, USUAL, whole, same) is None)


def counted_parts(
    plan: Plan, pattern: Pattern, size: PatternSize, own: Gauge, case: Case
) -> tuple[Part, ...]:
    """The parts of a size by its counts at the own gauge, those that can be counted. What a garment
    differs from its counts by is common to them all."""
    both = [(one, at_gauge(one, case, pattern, own)) for one in size.parts]
    known = [(one, found) for one, found in both if found is not None]
    return tuple(
        _counted(plan, size.parts, one, found, at) for at, (one, found) in enumerate(known, 1)
    )


def stated_parts(
    plan: Plan, pattern: Pattern, size: PatternSize, own: Gauge, case: Case
) -> tuple[Part, ...]:
    """The parts of a size by the amount stated for it, carried over to the own gauge and shared
    among them; none where no amount is stated."""
    if size.stated_mm is None:
        return ()
    mm = size.stated_mm * yarn_factor(case, counts_of(pattern.gauge), counts_of(own))
    parts = size.parts or (SizePart(WHOLE, "piece"),)
    shares = shares_of(pattern, parts)
    return tuple(
        _stated(plan, one, round(mm * shares[one.name] / one.copies), at, len(parts) > 1)
        for at, one in enumerate(parts, 1)
    )


def shares_of(pattern: Pattern, parts: tuple[SizePart, ...]) -> dict[str, float]:
    """What each part takes of the whole, summing to 1: the pattern's own shares if it names every
    part, else those usual for their places (practice)."""
    own = {one.name: one.pct for one in pattern.shares}
    said = all(own.get(one.name, 0.0) > 0 for one in parts)
    weight = {one.name: own[one.name] if said else USUAL_SHARES[place_in(one)] for one in parts}
    whole = sum(weight.values())
    return {name: one / whole for name, one in weight.items()}


def _counted(
    plan: Plan, parts: tuple[SizePart, ...], one: SizePart, found: Recounted, position: int
) -> Part:
    tube = is_tube(one, parts)
    return Part(
        id=part_id(plan.id, one.name),
        plan_id=plan.id,
        name=one.name,
        shape=Runs((Run(found.rows, found.stitches, found.stitches_to),)),
        position=position,
        copies=one.copies,
        edges=edges_in(one, parts),
        shape_u_pct=100 * MODEL_SHARE,
        place=place_in(one),
        in_round=tube,
    )


def _stated(plan: Plan, one: SizePart, mm: int, position: int, shared: bool) -> Part:
    return Part(
        id=part_id(plan.id, one.name),
        plan_id=plan.id,
        name=one.name,
        shape=Stated(max(1, mm)),
        position=position,
        copies=one.copies,
        shape_u_pct=SHARE_U_PCT if shared else 0.0,
        place=place_in(one),
    )
