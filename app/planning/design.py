"""From a garment as it was designed to its parts: the construction is drawn, its pieces kept."""

from collections.abc import Mapping
from dataclasses import replace
from math import hypot

from app.book.design import Design
from app.book.gauge import Gauge
from app.book.person import Measure
from app.book.plan import Part, Plan
from app.book.shape import Run, Runs
from app.craft.constructions import construction_of
from app.craft.constructions.drawing import (
    Construction,
    Drawing,
    DrawnPiece,
    Impossible,
    Knit,
    Wanted,
)
from app.craft.constructions.wanting import Taken, want
from app.craft.domain import positive
from app.craft.garments import MODEL_SHARE
from app.craft.shaping import shaping_text
from app.craft.sizes import Measured

ALL_BANDS = "band"
"""Choices "band gauge" and "band needle" hold for every band that has none of its own, such as
"cuff gauge"; a gauge is written "24 × 32", stitches and rows in 10 cm, a needle in mm."""


def taken_for(design: Design, gauge: Gauge) -> Taken:
    """What a design wants at a gauge, with the measures that were assumed; ValueError as `want`."""
    construction = construction_of(design.construction)
    return want(
        construction,
        _cm(design.measures),
        Knit(gauge.stitches, gauge.rows, gauge.needle_mm),
        ease=_cm(design.ease),
        choices=_choices(design),
        band_knits=_band_knits(construction, design, gauge),
    )


def drawing_of(design: Design, gauge: Gauge) -> Drawing:
    """A design drawn at a gauge. Impossible, in words, where no such garment fits; ValueError for
    a construction, measure or choice there is not."""
    return construction_of(design.construction).draw(taken_for(design, gauge).wanted)


def parts_from(plan: Plan, gauge: Gauge) -> tuple[Part, ...]:
    """The parts of a plan from its design, none if it has no design. Their ids follow from their
    names, so that what was promised to a part stays when the garment is drawn anew. Errors as
    `drawing_of`."""
    if plan.design is None:
        return ()
    construction = construction_of(plan.design.construction)
    taken = taken_for(plan.design, gauge)
    pieces = construction.draw(taken.wanted).pieces
    u_pct = round(100 * shape_share(construction, taken), 1)
    return tuple(_part(plan, one, at, gauge, u_pct) for at, one in enumerate(pieces, 1))


def shaping_words(run: Run, in_round: bool, gauge: Gauge) -> str:
    """The work of a run in words, with its length for the tape, in cm and in inches."""
    told = shaping_text(run.rows, run.stitches, run.stitches_to, in_round)
    cm = 10 * run.rows / gauge.rows
    return f"{told} It is {cm:.1f} cm ({cm / 2.54:.1f} in) long."


def shape_share(construction: Construction, taken: Taken) -> float:
    """How unsure the fabric of a drawing is, as a share: what a garment differs from its drawing by
    (practice), and what each measure that nobody took may do to it."""
    plain = _fabric(construction.draw(taken.wanted))
    effects = [
        _effect(construction, taken.wanted, name, one, plain) for name, one in taken.assumed.items()
    ]
    return hypot(MODEL_SHARE, *effects)


def _effect(
    construction: Construction, wanted: Wanted, name: str, one: Measured, plain: float
) -> float:
    """A measure that could not be drawn larger counts by its own share."""
    wider = replace(wanted, measures={**wanted.measures, name: one.cm + one.u})
    try:
        return _fabric(construction.draw(wider)) / plain - 1
    except Impossible:
        return one.u / one.cm


def _fabric(drawing: Drawing) -> float:
    """Area in cm²."""
    return sum(
        piece.copies * piece.worked * piece.knit.wide(1) * piece.knit.long(1)
        for piece in drawing.pieces
    )


def _part(plan: Plan, piece: DrawnPiece, position: int, gauge: Gauge, u_pct: float) -> Part:
    knit = piece.knit
    own = (knit.stitches, knit.rows) != (gauge.stitches, gauge.rows)
    needle = knit.needle_mm if knit.needle_mm != gauge.needle_mm else None
    return Part(
        id=part_id(plan.id, piece.name),
        plan_id=plan.id,
        name=piece.name,
        shape=Runs(
            tuple(Run(r.rows, r.stitches, r.stitches_to, r.pattern, needle) for r in piece.runs)
        ),
        position=position,
        copies=piece.copies,
        gauge=_own_gauge(knit, gauge) if own else None,
        edges=piece.edges,
        shape_u_pct=u_pct,
        place=piece.place,
        in_round=piece.in_round,
    )


def part_id(plan_id: str, name: str) -> str:
    """The id of a drawn part: its plan's and its name."""
    return f"{plan_id}-{name.replace(' ', '-')}"


def _own_gauge(knit: Knit, gauge: Gauge) -> Gauge:
    return Gauge(knit.stitches, knit.rows, gauge.washed, knit.needle_mm, gauge.assumed_pct)


def _cm(measures: tuple[Measure, ...]) -> dict[str, float]:
    return {one.name: one.mm / 10 for one in measures}


def _choices(design: Design) -> dict[str, str]:
    return {one.name: one.value for one in design.choices}


def _band_knits(construction: Construction, design: Design, gauge: Gauge) -> dict[str, Knit]:
    choices = _choices(design)
    return {name: _band_knit(choices, name, gauge) for name in construction.bands or {}}


def _band_knit(choices: Mapping[str, str], band: str, gauge: Gauge) -> Knit:
    counted = choices.get(f"{band} gauge") or choices.get(f"{ALL_BANDS} gauge")
    needle = choices.get(f"{band} needle") or choices.get(f"{ALL_BANDS} needle")
    stitches, rows = _two(counted) if counted else (gauge.stitches, gauge.rows)
    return Knit(stitches, rows, _number(needle, "a needle") if needle else gauge.needle_mm)


def _two(text: str) -> tuple[float, float]:
    """ "24 × 32": stitches and rows in 10 cm; ValueError in words for anything else."""
    parts = text.replace("x", "×").split("×")
    if len(parts) != 2:
        raise ValueError(f"a gauge is written 24 × 32, stitches and rows in 10 cm, not {text!r}")
    return _number(parts[0], "stitches"), _number(parts[1], "rows")


def _number(text: str, what: str) -> float:
    try:
        return positive(float(text), what)
    except ValueError as not_one:
        raise ValueError(f"{what} must be a number more than zero, not {text!r}") from not_one
