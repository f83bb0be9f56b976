"""The gauge a swatch will have once it is washed."""

from app.craft.gauge import TEN_CM_IN, in_measure, per_10cm
from app.craft.relaxation import RELAXED, after_washing, washing_steps
from app.web.forms.table_fields import Asked, Field
from app.web.pages.table import Answer, Example, Line, Row, Sheet, Table
from app.web.pages.table_numbers import short
from app.web.shown import Shown


def ask(asked: Asked, shown: Shown) -> Answer:
    """Stitches and rows after washing, in the measure they were counted in."""
    measure = asked.words["measure"]
    before = [per_10cm(asked[name], measure) for name in ("stitches", "rows")]
    found = [one.scaled(in_measure(1.0, measure)) for one in after_washing(*before)]
    lines = tuple(
        Line(f"{word} in {measure}", short(shown, one.value), f"± {short(shown, one.u)}")
        for word, one in zip(("stitches", "rows"), found, strict=True)
    )
    stitches, rows = (short(shown, one.value) for one in found)
    sentence = f"About {stitches} × {rows} in {measure} once washed and dried flat."
    return Answer(sentence, lines, steps=washing_steps(*before))


def sheets(shown: Shown) -> tuple[Sheet, ...]:
    rows = tuple(
        Row(
            state,
            tuple(short(shown, k) for k in (one.courses, one.wales, one.area)),
            one.standing,
            one.source,
        )
        for state, one in RELAXED.items()
    )
    columns = ("rows × cm", "stitches × cm", "in a square cm × cm²")
    caption = "How plain knit wool settles: counts in a cm, times the cm of yarn in a stitch"
    return (Sheet(caption, "State", columns, rows),)


TABLE = Table(
    word="washed-gauge",
    title="Gauge once washed",
    group="Fabric",
    place=5,
    answers="What will this unwashed swatch count once it is washed?",
    fields=(
        Field("stitches", "Stitches", least=1, most=200),
        Field("rows", "Rows", least=1, most=300),
        Field("measure", "Counted over", "choice", options={name: name for name in TEN_CM_IN}),
    ),
    ask=ask,
    example=Example(
        {"stitches": "20", "rows": "28", "measure": "10 cm"},
        "20 × 28 in 10 cm, not washed",
        "About 21.6 × 29.7 in 10 cm once washed and dried flat.",
    ),
    sheets=sheets,
    notes=("Wash the swatch to know: wool treated for the machine grows instead.",),
    more="munden relaxed swatch wash blocking tension",
)
