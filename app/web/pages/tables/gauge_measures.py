"""A gauge in 10 cm and in 4 inches."""

from app.craft.gauge import TEN_CM_IN, in_measure, per_10cm
from app.web.forms.table_fields import Asked, Field
from app.web.pages.table import Answer, Example, Line, Row, Sheet, Table
from app.web.pages.table_numbers import short
from app.web.shown import Shown

COUNTS = (12, 14, 16, 18, 20, 22, 24, 26, 28, 30, 32, 36, 40)


def ask(asked: Asked, shown: Shown) -> Answer:
    """The count in each of the measures."""
    measure = asked.words["measure"]
    stitches = per_10cm(asked["count"], measure)
    lines = tuple(
        Line(f"in {name}", short(shown, in_measure(stitches, name), 2)) for name in TEN_CM_IN
    )
    other = next(name for name in TEN_CM_IN if name != measure)
    there = short(shown, in_measure(stitches, other), 2)
    return Answer(f"{short(shown, asked['count'], 2)} in {measure} are {there} in {other}.", lines)


def sheets(shown: Shown) -> tuple[Sheet, ...]:
    rows = tuple(
        Row(
            f"{count} in 10 cm",
            (short(shown, in_measure(count, "4 in"), 2), short(shown, count / 4, 2)),
            "derived",
            "an inch is 25.4 mm by definition",
        )
        for count in COUNTS
    )
    return (Sheet("One gauge in both measures", "Gauge", ("in 4 in", "in 2.5 cm"), rows),)


TABLE = Table(
    word="gauge-measures",
    title="10 cm and 4 inches",
    group="Fabric",
    place=0,
    answers="What is this gauge over the other measure?",
    fields=(
        Field("count", "Stitches or rows", least=1, most=300),
        Field("measure", "in", "choice", options={name: name for name in TEN_CM_IN}),
    ),
    ask=ask,
    example=Example(
        {"count": "22", "measure": "10 cm"}, "22 in 10 cm", "22 in 10 cm are 22.35 in 4 in."
    ),
    sheets=sheets,
    notes=("The two differ by 1.6 %: on a chest of 100 cm that is 1.6 cm.",),
    more="tension stitches rows inch cm convert",
)
