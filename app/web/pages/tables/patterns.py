"""Stitch patterns: what each takes beyond its stitches, and how sure that is."""

from app.craft.figure import Figure
from app.craft.patterns import StitchPattern, pattern_of, pattern_step, patterns, yarn_in_pattern
from app.web.forms.table_fields import Asked, Field
from app.web.pages.table import Answer, Example, Line, Row, Sheet, Table
from app.web.pages.table_numbers import plain, short
from app.web.shown import Shown

NAMES = {one.name: one.name for one in patterns()}


def ask(asked: Asked, shown: Shown) -> Answer:
    """Metres in so many stitches of a pattern."""
    pattern = pattern_of(asked.words["pattern"])
    loop = Figure(asked["loop"], "cm")
    yarn = yarn_in_pattern(pattern, asked["stitches"], loop)
    metres = f"{plain(shown, yarn.value)} m"
    doubt = f", give or take {plain(shown, yarn.u, 2)} m" if yarn.u else ""
    lines = (
        Line("yarn", metres, "stitches × cm in a stitch, and the extra"),
        Line("extra", f"{short(shown, 100 * pattern.extra)} %", pattern.note),
    )
    step = pattern_step(pattern, asked["stitches"], loop)
    return Answer(f"{metres}{doubt}.", lines, steps=(step,))


def sheets(shown: Shown) -> tuple[Sheet, ...]:
    rows = tuple(
        Row(
            one.name,
            (_multiple(one), _extra(shown, one), _area(shown, one), one.note),
            one.standing,
            one.source,
        )
        for one in patterns()
    )
    columns = ("stitches", "extra yarn", "area without a swatch", "mind")
    return (Sheet("Stitch patterns", "Pattern", columns, rows, prose=True),)


def _multiple(one: StitchPattern) -> str:
    if one.multiple is None:
        return "–"
    return f"{one.multiple} + {one.plus}" if one.plus else str(one.multiple)


def _extra(shown: Shown, one: StitchPattern) -> str:
    return (
        f"{short(shown, 100 * one.extra)} ± {short(shown, 100 * one.extra_u)} %"
        if one.extra
        else "none"
    )


def _area(shown: Shown, one: StitchPattern) -> str:
    return f"± {short(shown, 100 * one.area_u)} %" if one.area_u else "as counted"


TABLE = Table(
    word="patterns",
    title="Stitch patterns",
    group="Fabric",
    place=6,
    answers="How much yarn do so many stitches of this pattern take?",
    fields=(
        Field("pattern", "Pattern", "choice", options=NAMES),
        Field("stitches", "Stitches in all", most=1e8),
        Field("loop", "Yarn in a stitch", unit="cm", least=0.1, most=50),
    ),
    ask=ask,
    example=Example(
        {"pattern": "stocking stitch", "stitches": "27480", "loop": "1.81"},
        "27480 stitches of 1.81 cm",
        "497.4 m.",
    ),
    sheets=sheets,
    notes=(
        "A purl takes what a knit stitch takes. What changes is how many stitches and rows fill "
        "the area: knit a swatch in the pattern.",
    ),
    more="rib garter cable lace moss stranded colourwork",
)
