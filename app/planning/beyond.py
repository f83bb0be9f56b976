"""Yarn beyond the stitches: what a stitch pattern takes, floats behind stranded rows, panels.

All of it is counted in stitches' worth of yarn, so that it shares the error of the yarn in a
stitch. Two yarns in a run are stripes or blocks of colour, and pass behind no stitch of each other,
unless its pattern is stranded knitting.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from app.book.plan import Extra, Part, Plan
from app.book.shape import Strand
from app.book.swatch import STOCKING_STITCH, Swatch
from app.craft.figure import Figure
from app.craft.patterns import StitchPattern, gauge_until_measured, known_or_unsure
from app.craft.working import Standing, Step
from app.planning.schedule import AnyRun, by_role, stitches_in

STRANDED = "stranded"
"""The row of the table of patterns that says what floats take: behind every stitch of a round
about a quarter of a stitch's yarn, ± 8 % of it."""


OF_PATTERN = {"cable panel": "cables", "floats": STRANDED}
"""Extras a maker names, and the stitch pattern whose swatch holds them."""

HELD = "in the yarn in a stitch already: the swatch was knit so, and measured"


@dataclass(frozen=True, slots=True)
class Beyond:
    """What one role takes beyond its stitches in one copy, in stitches' worth of yarn."""

    what: str
    how: str
    role: str
    stitches: Figure
    source: str
    standing: Standing = "practice"

    def step(self, loop: Figure) -> Step:
        """Its line of the working, in metres."""
        metres = self.stitches.times(loop, "m").scaled(0.01)
        return Step(self.what, self.how, metres.value, "m", metres.u, self.source, self.standing)


def beyond(part: Part, runs: tuple[AnyRun, ...], whose: str, held: str = "") -> tuple[Beyond, ...]:
    """All that a part takes beyond its stitches; `whose` names it in the causes of its error.
    `held` is the pattern whose extras the yarn in a stitch holds already: its swatch was knit in it
    and weighed or unravelled."""
    found: list[Beyond] = []
    for run in runs:
        for strand in run.strands:
            own = (*_of_pattern(run, strand), *_floats(run, strand))
            found += [_held(one) for one in own] if fabric(run.pattern).name == held else own
    for extra in part.extras:
        typed = _of_extra(extra, runs, whose)
        known = held and OF_PATTERN.get(extra.name) == held
        found += [_held(one) for one in typed] if known else typed
    return _together(found)


def beyond_amount(part: Part, need: Figure, whose: str) -> tuple[Figure, tuple[Step, ...]]:
    """A stated amount in m with the extras of its part, which the pattern did not know of, and
    their lines of the working."""
    whole, steps = need, []
    for extra in part.extras:
        m, u = (need.value * pct / 100 for pct in (extra.pct, extra.u_pct))
        whole = whole + Figure(m, "m", {f"{extra.name} of {whose}": u})
        how = f"{extra.pct:g} ± {extra.u_pct:g} % of what it takes by the stated amount"
        steps.append(Step(_titled(extra), how, m, "m", u, "as you said", "assumed"))
    return whole, tuple(steps)


def unmeasured(
    plan: Plan, part: Part, runs: tuple[AnyRun, ...], swatch: Swatch | None
) -> tuple[Beyond, ...]:
    """How unsure the patterns are that nobody swatched: stitches are cast on as they are counted,
    but how many rows make a length is not known. `swatch` is what the gauge was taken from."""
    found: list[Beyond] = []
    for run in runs:
        one = fabric(run.pattern)
        if one.own_gauge and not _measured(plan, part, one, swatch):
            found += [_rows_of(one, run, strand) for strand in run.strands]
    return _together(found)


def in_all(runs: tuple[AnyRun, ...], extra: tuple[Beyond, ...]) -> dict[str, Figure]:
    """Stitches' worth of yarn each role takes in one copy, with all that is beyond its stitches."""
    found = {role: Figure(count, "stitches") for role, count in by_role(runs).items()}
    for one in extra:
        found[one.role] = found[one.role] + one.stitches
    return found


def fabric(name: str) -> StitchPattern:
    """The stitch pattern of a run or swatch; stocking stitch where none was named."""
    return known_or_unsure(name or STOCKING_STITCH)


def _of_pattern(run: AnyRun, strand: Strand) -> Iterator[Beyond]:
    """A pattern's own extras; those of stranded knitting are its floats."""
    one = fabric(run.pattern)
    if not (one.extra or one.extra_u) or _has_floats(run, strand):
        return
    took = _took(run, strand)
    cause = {f"extras of {one.name}": took * one.extra_u}
    how = f"{100 * one.extra:g} ± {100 * one.extra_u:g} % of its stitches"
    extra = Figure(took * one.extra, "stitches", cause)
    yield Beyond(f"Extras of {one.name}", how, strand.role, extra, one.source, one.standing)


def _floats(run: AnyRun, strand: Strand) -> Iterator[Beyond]:
    """Yarn carried behind the stitches of other yarns."""
    if not _has_floats(run, strand):
        return
    one = fabric(run.pattern)
    passed = stitches_in(run) * (1 - strand.share) * strand.ends
    floats = Figure(passed * one.extra, "stitches", {"floats": passed * one.extra_u})
    how = f"{100 * one.extra:g} ± {100 * one.extra_u:g} % of a stitch behind each it passes"
    yield Beyond("Floats", how, strand.role, floats, one.source)


def _rows_of(one: StitchPattern, run: AnyRun, strand: Strand) -> Beyond:
    _, rows = gauge_until_measured(one, 1.0, 1.0)
    took = _took(run, strand)
    causes = {cause: took * share for cause, share in rows.causes.items()}
    how = f"as long as stocking stitch, ± {100 * rows.u:.0f} %: swatch it to know"
    unsure = Figure(0.0, "stitches", causes)
    return Beyond(f"Rows of {one.name}", how, strand.role, unsure, one.source, "assumed")


def _of_extra(extra: Extra, runs: tuple[AnyRun, ...], whose: str) -> Iterator[Beyond]:
    for role, worked in by_role(runs).items():
        cause = f"{extra.name} of {whose}"
        more = Figure(worked * extra.pct / 100, "stitches", {cause: worked * extra.u_pct / 100})
        how = f"{extra.pct:g} ± {extra.u_pct:g} % of its stitches"
        yield Beyond(_titled(extra), how, role, more, "as you said", "assumed")


def _titled(extra: Extra) -> str:
    return extra.name[:1].upper() + extra.name[1:]


def _held(one: Beyond) -> Beyond:
    """What is not counted twice."""
    return replace(one, stitches=Figure(0.0, "stitches"), how=HELD, standing="measured")


def _measured(plan: Plan, part: Part, one: StitchPattern, swatch: Swatch | None) -> bool:
    """Whether the part's gauge was counted on this pattern, as far as anybody said so."""
    gauge = part.gauge or plan.gauge
    if gauge is None or gauge.assumed_pct:
        return False
    if swatch is not None:
        return fabric(swatch.pattern).name == one.name
    return part.gauge not in (None, plan.gauge)


def _has_floats(run: AnyRun, strand: Strand) -> bool:
    return fabric(run.pattern).name == STRANDED and 0 < strand.share < 1


def _took(run: AnyRun, strand: Strand) -> float:
    return stitches_in(run) * strand.share * strand.ends


def _together(found: list[Beyond]) -> tuple[Beyond, ...]:
    """Lines of one kind and role added up: ten stripes carry one line of floats."""
    merged: dict[tuple[str, str, str], Beyond] = {}
    for one in found:
        key = one.what, one.how, one.role
        before = merged.get(key)
        sum_ = before.stitches + one.stitches if before else one.stitches
        merged[key] = Beyond(one.what, one.how, one.role, sum_, one.source, one.standing)
    return tuple(merged.values())
