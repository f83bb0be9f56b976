"""Wraps and class: how thick a yarn lies, and which class it belongs to."""

from app.craft.counts import from_tex, to_tex
from app.craft.thickness import WRAPS_SHARE, tex_from_wraps, wraps_diameter_mm, wraps_from_tex
from app.craft.twist import INCH_CM
from app.craft.yarn_class import OPEN_END, Range, YarnClass, class_opinion, yarn_classes
from app.web.forms.reader import MISSING
from app.web.forms.table_fields import Asked, Fault, Field
from app.web.pages.table import Answer, Example, Line, Row, Sheet, Table
from app.web.pages.table_grist import SYSTEMS, grist_lines
from app.web.pages.table_numbers import plain, ranged, short
from app.web.shown import Shown


def ask(asked: Asked, shown: Shown) -> Answer:
    """Wraps per inch to expect, with the range, and the class by grist, gauge and wraps."""
    counted = asked.get("wraps")
    tex = _tex(asked)
    wraps = wraps_from_tex(tex)
    reach = 2 * WRAPS_SHARE * wraps
    lines = (
        Line("wraps per inch", short(shown, wraps), "0.376 × √(yd/lb)"),
        Line("wraps per cm", short(shown, wraps / INCH_CM)),
        Line("19 times in 20", ranged(shown, wraps - reach, wraps + reach), "wraps per inch"),
        Line("as it lies", f"{plain(shown, wraps_diameter_mm(wraps), 3)} mm", "an inch ÷ wraps"),
        *grist_lines(shown, tex),
    )
    opinion = class_opinion(tex, asked.get("stitches"), counted)
    sentence = f"About {short(shown, wraps, 0)} wraps per inch; {opinion.sentence}."
    if "count" not in asked.numbers:
        sentence = f"About {short(shown, from_tex('m/100 g', tex), 0)} m/100 g; {opinion.sentence}."
    return Answer(sentence, lines, steps=opinion.steps)


def _tex(asked: Asked) -> float:
    """From the count, or from wraps where that is all there is."""
    if "count" in asked.numbers:
        return to_tex(asked.words["system"], asked["count"])
    if "wraps" in asked.numbers:
        return tex_from_wraps(asked["wraps"])
    raise Fault("count", f"{MISSING} Without it, type the wraps you counted.")


def sheets(shown: Shown) -> tuple[Sheet, ...]:
    rows = tuple(_row(one, shown) for one in yarn_classes())
    columns = ("yd/lb", "stitches in 4 in", "wraps per inch")
    return (Sheet("Yarn classes of the Craft Yarn Council", "Class", columns, rows),)


def _row(one: YarnClass, shown: Shown) -> Row:
    spans = (one.yards_per_pound, one.stitches, one.wraps)
    return Row(one.label, tuple(_span(shown, span) for span in spans), one.standing, one.source)


def _span(shown: Shown, span: Range | None) -> str:
    if span is None:
        return "–"
    low, high = span
    return ranged(shown, low or None, None if high >= OPEN_END else high, 0)


TABLE = Table(
    word="wraps",
    title="Wraps and yarn class",
    group="Yarn",
    place=5,
    answers="How many wraps per inch, and which class of yarn?",
    fields=(
        Field("count", "Grist or count", "count", optional=True, most=1e7),
        Field("system", "in", "choice", options=SYSTEMS),
        Field("wraps", "Wraps per inch", optional=True, least=1, most=150),
        Field("stitches", "Stitches in 10 cm", optional=True, least=2, most=100),
    ),
    ask=ask,
    example=Example(
        {"count": "222", "system": "m/100 g"},
        "222 m/100 g",
        "About 12 wraps per inch; 3 Light by its grist.",
    ),
    sheets=sheets,
    notes=(
        "Wrap loosely, yarn just touching yarn, over at least an inch, in several places.",
        "A weaver's diameter is of pressed yarn and comes out more than twice as many: the two are "
        "never turned into each other.",
        "Classes overlap. A class says what to try; a swatch decides.",
    ),
    more="wpi diameter thickness weight category lace fingering worsted bulky",
)
