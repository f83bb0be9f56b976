"""Wraps and class: how thick a yarn lies, and which class it belongs to."""

from app.craft.counts import to_tex
from app.craft.thickness import WRAPS_SHARE, wraps_diameter_mm, wraps_from_tex
from app.craft.yarn_class import OPEN_END, Range, YarnClass, class_sentence, yarn_classes
from app.web.forms.table_fields import Asked, Field
from app.web.pages.table import Answer, Example, Line, Row, Sheet, Table
from app.web.pages.table_grist import grist_fields, grist_lines
from app.web.pages.table_numbers import plain, ranged, short
from app.web.shown import Shown


def ask(asked: Asked, shown: Shown) -> Answer:
    """Wraps per inch to expect, with the range, and the class by grist and gauge."""
    tex = to_tex(asked.words["system"], asked["count"])
    wraps = wraps_from_tex(tex)
    reach = 2 * WRAPS_SHARE * wraps
    lines = (
        Line("wraps per inch", short(shown, wraps), "0.376 × √(yd/lb)"),
        Line("wraps per cm", short(shown, wraps / 2.54)),
        Line("19 times in 20", ranged(shown, wraps - reach, wraps + reach), "wraps per inch"),
        Line("as it lies", f"{plain(shown, wraps_diameter_mm(wraps), 3)} mm", "an inch ÷ wraps"),
    )
    named = class_sentence(tex, asked.get("stitches"))
    sentence = f"About {short(shown, wraps, 0)} wraps per inch; {named}."
    return Answer(sentence, (*lines, *grist_lines(shown, tex)))


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
        *grist_fields(),
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
