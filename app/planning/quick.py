"""The quick reckoning: a garment by its kind and a body, against an amount of yarn. Nothing saved.

What the maker has no number for is assumed, wide, and named. The need goes through the same
reckoning as every plan; the plan it makes can be kept.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from math import hypot

from app.book.book import Book
from app.book.gauge import Gauge
from app.book.ids import new_id
from app.book.plan import Part, Plan
from app.book.settings import Settings
from app.book.shape import Rectangle, Shape, Trapezoid
from app.craft.fabric import loop_cm
from app.craft.figure import Figure
from app.craft.garments import Garment, Piece, garment
from app.craft.odds import expected_above_zero, joint_odds, normal_quantile, raise_to
from app.craft.working import Step
from app.planning.gauges import FIRMNESS_SHARE, ROWS_TO_STITCHES, USUAL_FIRMNESS, gauge_from_grist
from app.planning.reckoning import reckon

MEASURED_SHARE = 0.02
"""Standard uncertainty of a length or weight the maker names, as a share (practice)."""

USUAL_TEX = Figure(450.0, "tex", {"grist": 157.5})
"""A yarn of middling thickness, where neither grist nor gauge is known (assumed)."""


@dataclass(frozen=True, slots=True)
class Question:
    """What is asked. `have_m` or `have_g` of yarn; `tex` its grist if known; `measures` in cm."""

    kind: str
    have_m: float | None = None
    have_g: float | None = None
    tex: Figure | None = None
    gauge: Gauge | None = None
    measures: Mapping[str, float] | None = None
    sureness_pct: float = 90.0


@dataclass(frozen=True, slots=True)
class QuickAnswer:
    """Metres needed and on hand, the odds (0 to 1), and what is short or left, in m and g.

    `assumed` names every number that was not given, with its width; `plan` and `parts` can be
    kept as they are.
    """

    need: Figure
    supply: Figure
    odds: float
    sureness: float
    short_m: float
    short_g: float
    left_m: float
    left_at_least_m: float
    assumed: tuple[Step, ...]
    working: tuple[Step, ...]
    plan: Plan
    parts: tuple[Part, ...]

    @property
    def enough(self) -> bool:
        return self.short_m == 0.0


def quick(question: Question, settings: Settings) -> QuickAnswer:
    """The answer to one question; ValueError, in words, for a body no such garment fits on."""
    drawn = garment(question.kind, question.measures)
    tex, gauge, assumed = _yarn_and_gauge(question)
    plan = Plan(new_id(), question.kind.capitalize(), gauge=gauge)
    parts = tuple(_part(plan, drawn, piece, i) for i, piece in enumerate(drawn.pieces, 1))
    answer = reckon(Book(settings=settings, plans=(plan,), parts=parts)).plan(plan.id)
    need = answer.need
    if question.gauge is None:
        need = need.unsure("grist", need.value * tex.causes["grist"] / tex.value / 2)
        gauge = replace(gauge, assumed_pct=100 * hypot(FIRMNESS_SHARE, tex.u / tex.value / 2))
    supply = _supply(question, tex)
    margin, sureness = supply - need, question.sureness_pct / 100
    (short,) = raise_to([margin], sureness)
    return QuickAnswer(
        need=need,
        supply=supply,
        odds=joint_odds([margin])[0],
        sureness=sureness,
        short_m=short,
        short_g=short * tex.value / 1000,
        left_m=expected_above_zero(margin),
        left_at_least_m=max(0.0, margin.value - normal_quantile(0.9) * margin.u),
        assumed=(*assumed, *_assumed_sizes(drawn)),
        working=(*(step for part in answer.parts for step in part.working), *answer.working[:1]),
        plan=replace(plan, gauge=gauge),
        parts=parts,
    )


def _yarn_and_gauge(question: Question) -> tuple[Figure, Gauge, tuple[Step, ...]]:
    """Grist, gauge and what had to be assumed of the two: each is a hint of the other."""
    if question.tex and question.gauge:
        return _one_cause(question.tex), question.gauge, _rows_guessed(question.gauge)
    if question.gauge:
        tex = _tex_from_gauge(question.gauge)
        grist = f"{100_000 / tex.value:.0f} m/100 g"
        how = f"(11 × yarn in a stitch)², an ordinary fabric at your gauge: {grist}"
        step = Step("Grist of the yarn", how, tex.value, "tex", tex.u, "", "assumed")
        return tex, question.gauge, (step, *_rows_guessed(question.gauge))
    tex = _one_cause(question.tex) if question.tex else USUAL_TEX
    gauge, loop, step = gauge_from_grist(tex, question.kind)
    across, along = round(gauge.stitches, 1), round(gauge.rows, 1)
    gauge = Gauge(across, along, assumed_pct=100 * FIRMNESS_SHARE)
    how = f"{gauge.stitches:.0f} × {gauge.rows:.0f} in 10 cm, usual for this yarn"
    steps = [Step("Gauge", how, loop.value, "cm", step.u, step.source, "assumed")]
    if question.tex is None:
        how = f"a yarn of middling thickness: {100_000 / tex.value:.0f} m/100 g"
        steps.insert(0, Step("Grist of the yarn", how, tex.value, "tex", tex.u, "", "assumed"))
    return tex, gauge, tuple(steps)


def _rows_guessed(gauge: Gauge) -> tuple[Step, ...]:
    if not gauge.assumed_pct:
        return ()
    how = f"{ROWS_TO_STITCHES:g} rows to a stitch, as hand-knit stocking stitch has"
    source = "common practice, no source"
    u = gauge.rows * 2 * gauge.assumed_pct / 100
    return (Step("Rows", how, gauge.rows, "in 10 cm", u, source, "assumed"),)


def _one_cause(tex: Figure) -> Figure:
    return Figure(tex.value, "tex", {"grist": tex.u})


def _tex_from_gauge(gauge: Gauge) -> Figure:
    loop = loop_cm(gauge.stitches, gauge.rows, gauge.washed)
    tex = (USUAL_FIRMNESS * loop.value) ** 2
    return Figure(tex, "tex", {"grist": 2 * FIRMNESS_SHARE * tex})


def _supply(question: Question, tex: Figure) -> Figure:
    if question.have_m is not None:
        return Figure(question.have_m, "m", {"your yarn": question.have_m * MEASURED_SHARE})
    grams = question.have_g or 0.0
    mg = Figure(1000 * grams, "mg", {"your scale": 1000 * grams * MEASURED_SHARE})
    return mg.per(tex, "m")


def _part(plan: Plan, drawn: Garment, piece: Piece, position: int) -> Part:
    share = hypot(*drawn.causes.values())
    return Part(
        new_id(),
        plan.id,
        piece.name,
        _shape(piece),
        position,
        piece.copies,
        shape_u_pct=round(100 * share, 1),
    )


def _shape(piece: Piece) -> Shape:
    width, other = round(10 * piece.width_cm), round(10 * piece.width_to_cm)
    length = round(10 * piece.length_cm)
    return Rectangle(width, length) if width == other else Trapezoid(width, other, length)


def _assumed_sizes(drawn: Garment) -> tuple[Step, ...]:
    return tuple(
        Step(
            name.capitalize(),
            "from the chest, by the body table" if one.source else "usual",
            one.cm,
            "cm",
            one.u,
            one.source,
            one.standing,
        )
        for name, one in drawn.assumed.items()
    )
