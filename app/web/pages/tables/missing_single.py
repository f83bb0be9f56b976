"""The missing single: what must be plied with what is there."""

from app.craft.counts import to_tex
from app.craft.plying import missing_single
from app.web.forms.table_fields import Asked, Fault, Field
from app.web.pages.table import Answer, Example, Row, Sheet, Table
from app.web.pages.table_grist import SYSTEMS, grist_lines, grist_said
from app.web.pages.table_numbers import plain
from app.web.shown import Shown


def ask(asked: Asked, shown: Shown) -> Answer:
    """The single that is wanted beside the others."""
    system = asked.words["system"]
    others = [asked[name] for name in ("other1", "other2") if name in asked.numbers]
    contraction = 1 / (1 - (asked.get("take_up") or 0.0) / 100)
    number = missing_single(system, asked["wanted"], *others, contraction=contraction)
    if number is None:
        raise Fault("wanted", "The singles you have are as heavy as this yarn already.")
    tex = to_tex(system, number)
    sentence = f"A single of {plain(shown, number)} {system}: {grist_said(shown, tex)}."
    return Answer(sentence, grist_lines(shown, tex))


def sheets(shown: Shown) -> tuple[Sheet, ...]:
    number = missing_single("cotton", 40 / 3, 40) or 0.0
    rows = (
        Row(
            "13⅓ cotton with a single of 40",
            (plain(shown, number),),
            "derived",
            "the inverse of Brooks, Cotton Manufacturing",
        ),
    )
    return (Sheet("A missing single in print", "Yarn wanted", ("single missing",), rows),)


TABLE = Table(
    word="missing-single",
    title="The missing single",
    group="Yarn",
    place=3,
    answers="What must I spin to ply with what I have?",
    fields=(
        Field("system", "Counted in", "choice", options=SYSTEMS),
        Field("wanted", "Plied yarn wanted", "count", most=1e7),
        Field("other1", "Single you have", "count", most=1e7),
        Field("other2", "and another", "count", optional=True, most=1e7),
        Field("take_up", "Take-up in plying", unit="%", optional=True, least=0, most=90),
    ),
    ask=ask,
    example=Example(
        {"system": "m/100 g", "wanted": "220", "other1": "500"},
        "220 m/100 g wanted, with a single of 500 m/100 g",
        "A single of 392.9 m/100 g: 254.5 tex, 392.9 m/100 g, 1949 yd/lb.",
    ),
    sheets=sheets,
    notes=("In tex the singles add up to the plied yarn, so the missing one is what is left.",),
    more="ply plying third",
)
